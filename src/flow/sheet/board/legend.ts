import { type Markup, svg } from '../../../base/markup/element.ts';
import { defectKinds } from '../../stock/defect.ts';
import type { Box } from './box.ts';
import { defectMark } from './defect-mark.ts';
import type { BoardFacts } from './facts.ts';
import { flagMark } from './flag.ts';
import { sheetWidth } from './frame.ts';
import { glyphMark, glyphWidth, type Glyph } from './glyph.ts';
import { lineAt, lineHeight, lineWidth } from './text-line.ts';

const type = 22;
const rowStep = 40;
const swatch = { w: 46, h: 28 };

interface Entry {
  readonly text: string;
  readonly width: number;
  /** Draws the sample in a box whose left top is given. */
  readonly sample: (x: number, y: number) => Markup | readonly Markup[];
}

/**
 * What the signs of this diagram mean, only those that it uses, set in lines.
 * @returns SVG from y = 0 down, and its height
 */
export function legend(facts: BoardFacts, hasCallOuts: boolean): { markup: Markup; height: number } {
  const entries = [...signEntries(facts, hasCallOuts), ...faceEntries(facts), ...kindEntries(facts)];
  const marks: Markup[] = [];
  let x = 0;
  let y = 0;
  for (const entry of entries) {
    const textX = entry.width + 8;
    const whole = textX + lineWidth([{ text: entry.text }], type);
    if (x > 0 && x + whole > sheetWidth) [x, y] = [0, y + rowStep];
    marks.push(svg('g', {}, entry.sample(x, y), lineAt(x + textX, y + 1, type, [{ text: entry.text }])));
    x += whole + 36;
  }
  const markup = svg('g', { 'aria-label': 'what the signs mean' }, marks);
  return { markup, height: y + Math.max(lineHeight(type), swatch.h) + 6 };
}

function boxAt(x: number, y: number): Box {
  return { x: x + 6, y, w: swatch.w - 12, h: swatch.h };
}

function rect(x: number, y: number, more: Record<string, string | number>): Markup {
  return svg('rect', {
    x,
    y,
    width: swatch.w,
    height: swatch.h,
    fill: '#fff',
    stroke: '#000',
    'stroke-width': 2,
    ...more,
  });
}

function signEntries(facts: BoardFacts, hasCallOuts: boolean): Entry[] {
  const { laid } = facts;
  const uses = (face: 'A' | 'B'): boolean => laid.pieces.some(({ showFace }) => showFace === face);
  const entries: Entry[] = [
    glyphEntry('both ways', 'grain'),
    {
      text: 'cut, in this order',
      width: 30,
      sample: (x, y) =>
        flagMark({ kind: 'cut', text: '1', title: 'cut number', box: { x, y, w: 29, h: 29 }, leader: '' }),
    },
  ];
  if (uses('A')) entries.push(glyphEntry('face up', 'A: show face is face A, drawn here'));
  if (uses('B')) entries.push(glyphEntry('face down', 'B: show face is face B, underneath'));
  if (facts.steps.length > 0)
    entries.push({
      text: 'run: grain flows on',
      width: 22,
      sample: (x, y) =>
        svg('path', {
          d: `M${x + 1} ${y + 4}l20 11l-20 11z`,
          fill: '#fff',
          stroke: '#000',
          'stroke-width': 3,
        }),
    });
  if (hasCallOuts)
    entries.push({
      text: 'see the key',
      width: 30,
      sample: (x, y) =>
        flagMark({ kind: 'call-out', text: 'a', title: 'letter', box: { x, y, w: 29, h: 29 }, leader: '' }),
    });
  if (laid.offcuts.length > 0)
    entries.push({
      text: 'offcut to keep',
      width: swatch.w,
      sample: (x, y) => [
        rect(x, y, {}),
        svg('rect', {
          ...{ x: x + 4, y: y + 4, width: swatch.w - 8, height: swatch.h - 8 },
          ...{ fill: 'none', stroke: '#000', 'stroke-width': 2, 'stroke-dasharray': '18 8' },
        }),
      ],
    });
  if (facts.waste.some(({ trim }) => trim)) entries.push(wasteEntry('trim', '#c4c4c4'));
  if (facts.waste.some(({ trim }) => !trim)) entries.push(wasteEntry('scrap', '#ececec'));
  return entries;
}

function glyphEntry(glyph: Glyph, text: string): Entry {
  const size = glyph === 'both ways' ? 40 : type;
  return {
    text,
    width: glyphWidth(glyph, size),
    sample: (x, y) => glyphMark(glyph, x, y + (glyph === 'both ways' ? 28 : 22), size),
  };
}

function wasteEntry(text: string, fill: string): Entry {
  return {
    text,
    width: swatch.w,
    sample: (x, y) => [
      rect(x, y, { fill }),
      svg('path', {
        d: `M${x} ${y}l${swatch.w} ${swatch.h}M${x} ${y + swatch.h}l${swatch.w} ${-swatch.h}`,
        stroke: '#000',
        'stroke-width': 1,
      }),
    ],
  };
}

function faceEntries(facts: BoardFacts): Entry[] {
  const texts = [
    ['A', 'defect on face A'],
    ['B', 'on face B, seen through'],
    ['through', 'through both'],
  ] as const;
  return texts
    .filter(([face]) => facts.defects.some((defect) => defect.face === face))
    .map(([face, text]) => ({
      text,
      width: swatch.w,
      sample: (x, y) => defectMark('stain', face, boxAt(x, y)).slice(1),
    }));
}

function kindEntries(facts: BoardFacts): Entry[] {
  return defectKinds
    .filter((kind) => facts.defects.some((defect) => defect.kind === kind))
    .map((kind) => ({ text: kind, width: swatch.w, sample: (x, y) => defectMark(kind, 'A', boxAt(x, y)) }));
}
