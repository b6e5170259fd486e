import { runPast } from './corner.ts';
import { type PlannedLeg, panelEdges } from './planned-leg.ts';
import { type Point, pointOf } from './point.ts';

/** A polygon in the plan view, its corners in order. */
export type Outline = readonly Point[];

/** The wall corners from left to right: one more than there are legs. */
export function wallPath(legs: readonly PlannedLeg[]): Outline {
  const last = legs.at(-1);
  const starts = legs.map(({ frame }) => frame.origin);
  return last === undefined ? starts : [...starts, pointOf(last.frame, last.alongWall, 0)];
}

/** The back of the mantel from left to right: the walls, or where it leaves a gap along them, parallel with them. */
export function backPath(legs: readonly PlannedLeg[]): Outline {
  const ends = legs.map((leg, index) => {
    const next = legs[index + 1];
    const past = next === undefined ? backReach(leg, 'right') : runPast(leg.gap, next.gap, leg.right.turn);
    return pointOf(leg.frame, leg.alongWall + past, leg.gap);
  });
  const first = legs[0];
  return first === undefined ? ends : [pointOf(first.frame, -backReach(first, 'left'), first.gap), ...ends];
}

/** How far the back of the mantel reaches past a free end of a leg's wall: a cap stands within it. */
function backReach(leg: PlannedLeg, side: 'left' | 'right'): number {
  return leg[side].kind === 'capped' ? 0 : leg[side].panel.atBack;
}

/** The outer face of the mantel from left to right, back to the wall round the caps. */
export function outerPath(legs: readonly PlannedLeg[]): Outline {
  const path: Point[] = [];
  legs.forEach((leg, index) => {
    const { alongWall, frame, left, right } = leg;
    const off = leg.projection;
    const from = -left.carcass - left.gain;
    const to = alongWall + right.carcass + right.gain;
    if (index === 0) {
      if (left.kind === 'capped') path.push(pointOf(frame, from, leg.gap));
      path.push(pointOf(frame, from, off));
    }
    path.push(pointOf(frame, to, off));
    if (index === legs.length - 1 && right.kind === 'capped') path.push(pointOf(frame, to, leg.gap));
  });
  return path;
}

/** The facing of a leg seen from above: outer face first, from left to right. */
export function facingOutline(leg: PlannedLeg): Outline {
  const { left, right, alongWall, projection, depth, frame } = leg;
  const [from, to] = [-left.carcass, alongWall + right.carcass];
  return [
    pointOf(frame, from - left.gain, projection),
    pointOf(frame, to + right.gain, projection),
    pointOf(frame, to, depth),
    pointOf(frame, from, depth),
  ];
}

/** A cap seen from above, outer face first. @param side the end of the leg that it closes */
export function capOutline(leg: PlannedLeg, side: 'left' | 'right'): Outline {
  const { alongWall, gap, depth, projection, frame } = leg;
  const outer = side === 'left' ? 0 : alongWall;
  const inner = side === 'left' ? -leg.left.carcass : alongWall + leg.right.carcass;
  return [
    pointOf(frame, outer, gap),
    pointOf(frame, outer, projection),
    pointOf(frame, inner, depth),
    pointOf(frame, inner, gap),
  ];
}

/** A top or bottom panel as [along, off] in the leg's own measure: along its back edge first, then back along the front edge. */
export function panelCorners(leg: PlannedLeg): readonly (readonly [along: number, off: number])[] {
  const { left, right, alongWall, depth } = leg;
  const { back, front } = panelEdges(leg);
  return [
    [-left.panel.atBack, back],
    [alongWall + right.panel.atBack, back],
    ...(right.bend === undefined ? [] : [[alongWall + right.bend, depth] as const]),
    [alongWall + right.panel.atFront, front],
    [-left.panel.atFront, front],
    ...(left.bend === undefined ? [] : [[-left.bend, depth] as const]),
  ];
}

/** The panel in the plan view. */
export function panelOutline(leg: PlannedLeg): Outline {
  return panelCorners(leg).map(([along, off]) => pointOf(leg.frame, along, off));
}
