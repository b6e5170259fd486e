import { type Markup, svg } from '../../../base/markup/element.ts';
import { sansSerif, textWidth } from '../../../base/markup/text-width.ts';
import { textAt } from '../../../flow/sheet/board/text-line.ts';
import type { LumberEstimate } from './estimate.ts';
import { lumberName } from './lumber-wanted.ts';
import { askedChances, chanceOf } from './summary.ts';

const width = 1200;
const height = 840;
const plot = { left: 120, top: 30, right: 1020, bottom: 630 };
const type = 36;
/** Told apart without colour: plain, long dashes, dots, dash and dot. */
const dashes = [null, '26 12', '4 12', '26 10 4 10'];
const weights = [8, 7, 8, 7];

/**
 * The chance that the job comes out, against the board feet asked for: a staircase for each grade, the asked chances as
 * lines across, the rule of thumb (20 to 30 %) as a hatched band. Whole-number coordinates.
 */
export function chanceChart(estimate: LumberEstimate): Markup {
  const most = scaleEnd(estimate);
  const x = (feet: number): number =>
    plot.left + Math.round(((plot.right - plot.left) * Math.min(feet, most)) / most);
  const y = (chance: number): number => plot.bottom - Math.round((plot.bottom - plot.top) * chance);
  const title = `Chance that the job comes out of ${lumberName(estimate.wanted)}, by board feet and grade`;
  return svg(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'aria-label': title,
      'font-family': sansSerif,
    },
    svg('title', {}, title),
    svg('rect', { width, height, fill: '#fff' }),
    thumbBand(estimate, x),
    chanceLines(y),
    feetAxis(most, x),
    curves(estimate, most, x, y),
    gradeKey(estimate),
  );
}

/** A round number of board feet that shows every 95 % quantity, or else most of what was tried. */
function scaleEnd({ grades, wanted }: LumberEstimate): number {
  const reached = grades.flatMap(({ summary }) => summary.quantities.map(({ boardFeet }) => boardFeet ?? 0));
  const most = Math.max(2 * wanted.netBoardFeet, 1.15 * Math.max(0, ...reached), 10);
  const step = stepFor(most);
  return step * Math.ceil(most / step);
}

function stepFor(most: number): number {
  return (
    [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 5000, 20_000].find((step) => most / step <= 10) ?? 100_000
  );
}

function thumbBand({ wanted, grades }: LumberEstimate, x: (feet: number) => number): Markup | null {
  const [low, high] = grades[0]?.thumbs ?? [];
  if (low === undefined || high === undefined || wanted.netBoardFeet <= 0) return null;
  const [left, right] = [x(low.boardFeet), Math.max(x(low.boardFeet) + 6, x(high.boardFeet))];
  const words = 'net + 20 to 30 %';
  const key = { left: plot.right - 40 - textWidth(words, type, false), top: height - 108 };
  return svg(
    'g',
    { 'aria-label': `rule of thumb: ${words}` },
    hatched(left, plot.top, right - left, plot.bottom - plot.top),
    hatched(key.left - 46, key.top, 36, 36),
    textAt(key.left, key.top + 30, type, words),
  );
}

function hatched(x: number, y: number, w: number, h: number): Markup {
  const lines: string[] = [];
  for (let at = y; at + 14 <= y + h; at += 14) lines.push(`M${x} ${at + 12}L${x + w} ${at + 2}`);
  return svg('path', {
    d: `${lines.join('')}M${x} ${y}v${h}h${w}v${-h}z`,
    ...{ stroke: '#000', 'stroke-width': 2, fill: 'none' },
  });
}

function chanceLines(y: (chance: number) => number): Markup {
  const grid = [0, ...askedChances, 1];
  return svg(
    'g',
    { 'aria-label': 'chances' },
    grid.map((chance) => {
      const label = `${Math.round(chance * 100)} %`;
      const dash = chance === 0 || chance === 1 ? null : '3 9';
      return svg(
        'g',
        {},
        svg('path', {
          d: `M${plot.left} ${y(chance)}H${plot.right}`,
          ...{ stroke: '#000', 'stroke-width': chance === 0 ? 4 : 2, 'stroke-dasharray': dash, fill: 'none' },
        }),
        // 95 and 100 % stand close: 100 % goes without saying.
        chance !== 1 && textAt(plot.left - 12 - textWidth(label, type, false), y(chance) + 12, type, label),
      );
    }),
  );
}

function feetAxis(most: number, x: (feet: number) => number): Markup {
  const step = stepFor(most);
  const marks = Array.from({ length: Math.round(most / step) + 1 }, (_, index) => index * step);
  const name = 'board feet to ask for';
  return svg(
    'g',
    { 'aria-label': name },
    svg('path', {
      d: marks.map((feet) => `M${x(feet)} ${plot.bottom}v12`).join(''),
      stroke: '#000',
      'stroke-width': 3,
    }),
    marks.map((feet) => {
      const label = String(feet);
      return textAt(x(feet) - Math.round(textWidth(label, type, false) / 2), plot.bottom + 52, type, label);
    }),
    textAt(plot.left, height - 78, type, name),
  );
}

function curves(
  { grades }: LumberEstimate,
  most: number,
  x: (feet: number) => number,
  y: (chance: number) => number,
): Markup[] {
  let lastLabel = -Infinity;
  return grades
    .map(({ grade, visits }, index) => {
      const feet = Array.from({ length: 2 * Math.floor(most) + 1 }, (_, at) => at / 2);
      const shares = feet.map((at) => chanceOf(visits, at).share);
      const steps = feet.map((at, i) => (i === 0 ? '' : `H${x(at)}V${y(shares[i]!)}`)).join('');
      const path = `M${x(0)} ${y(shares[0]!)}${steps}H${plot.right}`;
      return { grade, path, end: y(shares.at(-1)!), dash: dashes[index % 4]!, weight: weights[index % 4]! };
    })
    .sort((a, b) => a.end - b.end)
    .map(({ grade, path, end, dash, weight }) => {
      // Labels from the highest curve down, each at least a line below the last.
      lastLabel = Math.max(end + 12, lastLabel + 42);
      return svg(
        'g',
        { 'aria-label': `grade ${grade}` },
        svg('title', {}, grade),
        svg('path', { d: path, fill: 'none', stroke: '#fff', 'stroke-width': weight + 6 }),
        svg('path', {
          d: path,
          fill: 'none',
          stroke: '#000',
          'stroke-width': weight,
          'stroke-dasharray': dash,
        }),
        textAt(plot.right + 12, lastLabel, type, grade, true),
      );
    });
}

/** Which line is which grade, for lines that end together. */
function gradeKey({ grades }: LumberEstimate): Markup {
  let x = plot.left;
  return svg(
    'g',
    { 'aria-label': 'lines' },
    grades.map(({ grade }, index) => {
      const from = x;
      x += 110 + textWidth(grade, type, true) + 40;
      return svg(
        'g',
        {},
        svg('path', {
          d: `M${from} ${height - 32}h96`,
          ...{
            stroke: '#000',
            'stroke-width': weights[index % 4]!,
            'stroke-dasharray': dashes[index % 4]!,
            fill: 'none',
          },
        }),
        textAt(from + 110, height - 20, type, grade, true),
      );
    }),
  );
}
