import type { LengthStyle } from '../../../base/units/format-length.ts';
import { ticks } from '../../../base/units/tick.ts';
import { type Markup, svg } from '../../../base/markup/element.ts';
import { angleText } from '../angle-text.ts';
import type { MantelPlan } from '../plan-mantel.ts';
import type { PlannedLeg } from '../planned-leg.ts';
import { pointOf } from '../point.ts';
import { wallCornerText } from '../wall-corner.ts';
import { type Lettering, bodyType, lettered, sizeOnDrawing } from './lettering.ts';
import { type Paper, type Spot, spotOf } from './paper.ts';
import { wallBand } from './wall-band.ts';

const lineHeight = bodyType + 4;

/** Wall angle and saw angle beside each other, outside each corner of the facing and at each end in a side wall. */
export function cornerWords(plan: MantelPlan, paper: Paper, style: LengthStyle): Markup {
  const marks = plan.legs.flatMap((leg, index) => [
    ...(index === 0 ? wordsAt(leg, 'left', paper, style) : []),
    ...wordsAt(leg, 'right', paper, style),
  ]);
  return svg('g', { 'aria-label': 'angles of the walls and of the saw' }, marks);
}

function wordsAt(leg: PlannedLeg, side: 'left' | 'right', paper: Paper, style: LengthStyle): Markup[] {
  const { kind, turn, bevel } = leg[side];
  const saw = `saw ${angleText(bevel)}`;
  switch (kind) {
    case 'corner':
      return outside(leg, side, paper, [`wall ${wallCornerText(turn)}`, saw]);
    case 'capped':
      return outside(leg, side, paper, [saw]);
    case 'wall':
      return beyondSideWall(leg, side, paper, [
        `wall ${angleText(90 + bevel)}`,
        saw,
        `gap ${sizeOnDrawing(ticks(0), style)}`,
      ] as const);
    case 'open':
      return [];
  }
}

/** On the bisector outside a corner, on its far side from the extension lines of both faces. */
function outside(leg: PlannedLeg, side: 'left' | 'right', paper: Paper, lines: readonly string[]): Markup[] {
  const end = leg[side];
  const off = leg.projection;
  const way = side === 'left' ? -1 : 1;
  const along = (side === 'left' ? 0 : leg.alongWall) + way * (end.carcass + end.gain);
  const half = (end.turn * Math.PI) / 360;
  const away = spreadFrom(half) * paper.unit;
  const corner = spotOf(paper, pointOf(leg.frame, along, off));
  const at = spotOf(
    paper,
    pointOf(leg.frame, along + way * Math.sin(half) * away, off + Math.cos(half) * away),
  );
  return stacked(lines, at, at.x - corner.x, 20);
}

/** How far from a corner a short text clears the extension lines on either side of it, drawing units. */
function spreadFrom(half: number): number {
  // Below the size that stands beside the face there.
  if (half < 0) return 100;
  return Math.min(200, Math.max(56, 48 / Math.sin(half)));
}

/** Behind the hatched band of the side wall that an end dies into. */
function beyondSideWall(
  leg: PlannedLeg,
  side: 'left' | 'right',
  paper: Paper,
  words: readonly [wall: string, saw: string, gap: string],
): Markup[] {
  const way = side === 'left' ? -1 : 1;
  const end = side === 'left' ? 0 : leg.alongWall;
  const spot = (units: number): Spot =>
    spotOf(paper, pointOf(leg.frame, end + way * units * paper.unit, leg.projection / 2));
  const [near, far] = [spot(0), spot(wallBand + 12)];
  const upright = Math.abs(far.y - near.y) > Math.abs(far.x - near.x);
  const lines = upright ? [`${words[0]}, ${words[1]}`, words[2]] : words;
  const rise = upright ? Math.sign(far.y - near.y) * lineHeight * (lines.length / 2) : 0;
  return stacked(lines, { x: far.x, y: Math.round(far.y + rise) }, far.x - near.x, upright ? 1000 : 0);
}

/** Lines below one another about a spot, pushed away to the side they lie on when that is farther than `near`. */
function stacked(lines: readonly string[], { x, y }: Spot, aside: number, near: number): Markup[] {
  const anchor: Lettering['anchor'] = Math.abs(aside) <= near ? 'middle' : aside < 0 ? 'end' : 'start';
  const top = y - Math.round((lineHeight * (lines.length - 1)) / 2);
  return lines.map((line, index) =>
    lettered(line, { x, y: top + index * lineHeight }, { anchor, bold: true }),
  );
}
