import { type Markup, svg } from '../../base/markup/element.ts';
import { sansSerif, textWidth } from '../../base/markup/text-width.ts';
import { ticksPerMillimetre } from '../../base/units/tick.ts';
import type { Box } from '../../flow/sheet/board/box.ts';
import { defectMark } from '../../flow/sheet/board/defect-mark.ts';
import { fitted, textAt } from '../../flow/sheet/board/text-line.ts';
import { nameText } from '../../flow/sheet/words/named.ts';
import { bare } from '../../flow/sheet/words/size-text.ts';
import type { Shop } from '../../flow/shop/shop.ts';
import type { Unrolled, UnrolledPiece } from './unrolled.ts';

/** A drawing unit is 0.1 mm of paper. */
const ticksPerUnitAtFullSize = ticksPerMillimetre / 10;
const paperWidth = 1840;
const side = 40;
/** Above the face: corners' words. Below: the pieces' names, boards and lengths. */
const head = 64;
const foot = 84;
const type = 22;

/** The scale 1 : n, n whole, at which the longest of these faces fits the paper. */
export function commonRatio(faces: readonly Unrolled[]): number {
  const longest = Math.max(1, ...faces.map(({ length }) => length));
  return Math.max(1, Math.ceil(longest / (paperWidth - 2 * side) / ticksPerUnitAtFullSize));
}

/** From ticks of the unrolled face to the paper: u to the right, v up. Whole drawing units. */
export function faceBox(
  face: Unrolled,
  ratio: number,
  at: { readonly u: number; readonly v: number; readonly length: number; readonly width: number },
): Box {
  const unit = ratio * ticksPerUnitAtFullSize;
  const x = side + Math.round(at.u / unit);
  const y = head + Math.round((face.width - at.v - at.width) / unit);
  return {
    x,
    y,
    w: side + Math.round((at.u + at.length) / unit) - x,
    h: head + Math.round((face.width - at.v) / unit) - y,
  };
}

/**
 * The face as it will stand, to scale, the wrap unrolled: each piece with the defects that show, a dash-dotted line at
 * each corner of the wall, a plain one where a glue line runs, and grain lines that run on only where the grain does.
 * @param label what the drawing is, for a reader who cannot see it
 */
export function drawFace(face: Unrolled, ratio: number, shop: Shop, label: string): Markup {
  const height = head + foot + faceBox(face, ratio, { u: 0, v: 0, length: 0, width: face.width }).h;
  return svg(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${paperWidth} ${height}`,
      role: 'img',
      'aria-label': label,
      'font-family': sansSerif,
    },
    svg('title', {}, label),
    grain(face, ratio),
    face.pieces.map((piece) => outline(face, ratio, piece)),
    face.pieces.flatMap((piece) =>
      piece.marks.map((mark) =>
        svg(
          'g',
          { 'aria-label': mark.defect.kind },
          defectMark(mark.defect.kind, 'A', faceBox(face, ratio, mark)),
        ),
      ),
    ),
    face.pieces.map((piece) => corner(face, ratio, piece)),
    captions(face, ratio, shop),
  );
}

/** Its upper and lower edge, and the ends of the whole face; where pieces meet, the corner's own line stands. */
function outline(face: Unrolled, ratio: number, piece: UnrolledPiece): Markup {
  const { x, y, w, h } = faceBox(face, ratio, piece);
  const left = piece.u === 0 ? `M${x} ${y}v${h}` : '';
  const right = piece.u + piece.length === face.length ? `M${x + w} ${y}v${h}` : '';
  const d = `M${x} ${y}h${w}M${x} ${y + h}h${w}${left}${right}`;
  return svg('path', { d, fill: 'none', stroke: '#000', 'stroke-width': 3, 'stroke-linecap': 'square' });
}

/** Thin lines along the grain. Each stretch of one strip has its own heights, so that a break is seen. */
function grain(face: Unrolled, ratio: number): Markup {
  let stretch = 0;
  const lines = face.pieces.flatMap((piece) => {
    if (piece.joint?.grainRuns === false || piece.glueBelow) stretch += 1;
    const { x, y, w, h } = faceBox(face, ratio, piece);
    const step = 17;
    const first = 6 + ((stretch * 7) % step);
    return Array.from({ length: Math.max(0, Math.ceil((h - first) / step)) }, (_, line) => {
      return `M${x} ${y + h - first - line * step}h${w}`;
    });
  });
  return svg('path', { d: lines.join('') || 'M0 0', fill: 'none', stroke: '#000', 'stroke-width': 0.5 });
}

function corner(face: Unrolled, ratio: number, piece: UnrolledPiece): Markup | null {
  if (piece.joint === null) return null;
  const { x } = faceBox(face, ratio, piece);
  const low = faceBox(face, ratio, { u: 0, v: 0, length: 0, width: face.width });
  const { turn, grainRuns } = piece.joint;
  const words = `${turn === 0 ? 'joint' : `${Math.round(10 * turn) / 10}°`}${grainRuns ? '' : ', grain breaks'}`;
  const wide = textWidth(words, type, !grainRuns);
  const left = Math.max(4, Math.min(paperWidth - wide - 4, x - Math.round(wide / 2)));
  return svg(
    'g',
    { 'aria-label': `corner: ${words}` },
    svg('path', {
      d: `M${x} ${low.y - 26}V${low.y + low.h + 14}`,
      stroke: '#000',
      'stroke-width': grainRuns ? 4 : 9,
      'stroke-dasharray': turn === 0 ? null : '22 6 4 6',
    }),
    textAt(left, low.y - 36, type, words, !grainRuns),
  );
}

/** Below each piece its name, and its board and length, or the length alone where both have no room. */
function captions(face: Unrolled, ratio: number, shop: Shop): Markup[] {
  const pieces = face.pieces.filter(({ glueBelow }) => !glueBelow);
  const boxes = pieces.map((piece) => faceBox(face, ratio, piece));
  const base = faceBox(face, ratio, { u: 0, v: 0, length: 0, width: 0 }).y;
  const names = lineUp(
    boxes,
    pieces.map(({ part }) => nameText(part)),
    true,
  );
  const sizes = pieces.map((piece, index) => {
    const size = bare(piece.length, shop);
    const whole = `${nameText(piece.board, 30)} ${piece.face}, ${size}`;
    return textWidth(whole, type, false) <= boxes[index]!.w - gap ? whole : size;
  });
  const written = (line: readonly Placed[], drop: number, isBold: boolean): Markup[] =>
    line.map(({ x, text }) => textAt(x, base + drop, type, text, isBold));
  return [...written(names, 36, true), ...written(lineUp(boxes, sizes, false), 66, false)];
}

/** Between two captions side by side. */
const gap = 8;

interface Placed {
  readonly x: number;
  readonly text: string;
}

/**
 * One line of captions, each in the middle of its piece. One that is wider than its piece may reach past its ends as far
 * as its neighbours' words leave room, and is cut short or left out beyond that.
 */
function lineUp(boxes: readonly Box[], texts: readonly string[], isBold: boolean): Placed[] {
  const wide = texts.map((text) => textWidth(text, type, isBold));
  const ends = boxes.map(({ x, w }, index) => {
    const half = Math.min(wide[index]!, w - gap) / 2;
    return [x + w / 2 - half, x + w / 2 + half] as const;
  });
  let reached = 4;
  return boxes.flatMap(({ x, w }, index): Placed[] => {
    const from = index === 0 ? reached : Math.max(reached, ends[index - 1]![1] + gap);
    const to = index === boxes.length - 1 ? paperWidth - 4 : ends[index + 1]![0] - gap;
    const text = fitted(texts[index]!, type, isBold, to - from);
    const own = textWidth(text, type, isBold);
    if (own > to - from) return [];
    const left = Math.round(Math.min(Math.max(x + (w - own) / 2, from), to - own));
    reached = left + own + gap;
    return [{ x: left, text }];
  });
}
