import type { Mantel } from './mantel.ts';
import { type PlannedLeg, innerLength } from './planned-leg.ts';
import { type Point, pointOf } from './point.ts';

/** A polygon in the plan view, its corners in order. */
export type Outline = readonly Point[];

/** The wall corners from left to right: one more than there are legs. */
export function wallPath(legs: readonly PlannedLeg[]): Outline {
  const last = legs.at(-1);
  const starts = legs.map(({ frame }) => frame.origin);
  return last === undefined ? starts : [...starts, pointOf(last.frame, last.alongWall, 0)];
}

/** The outer face of the mantel from left to right, back to the wall round the caps. */
export function outerPath(mantel: Mantel, legs: readonly PlannedLeg[]): Outline {
  const path: Point[] = [];
  legs.forEach((leg, index) => {
    const { alongWall, frame, left, right } = leg;
    const off = leg.projection + mantel.thickness;
    const to = alongWall + right.carcass + right.gain;
    if (index === 0) {
      if (left.kind === 'capped') path.push(pointOf(frame, -left.gain, 0));
      path.push(pointOf(frame, -left.carcass - left.gain, off));
    }
    path.push(pointOf(frame, to, off));
    if (index === legs.length - 1 && right.kind === 'capped') path.push(pointOf(frame, to, 0));
  });
  return path;
}

/** The facing of a leg seen from above: outer face first, from left to right. */
export function facingOutline(mantel: Mantel, leg: PlannedLeg): Outline {
  const { left, right, alongWall, projection, frame } = leg;
  const [from, to] = [-left.carcass, alongWall + right.carcass];
  const outer = projection + mantel.thickness;
  return [
    pointOf(frame, from - left.gain, outer),
    pointOf(frame, to + right.gain, outer),
    pointOf(frame, to, projection),
    pointOf(frame, from, projection),
  ];
}

/** A cap seen from above, outer face first. @param side the end of the leg that it closes */
export function capOutline(mantel: Mantel, leg: PlannedLeg, side: 'left' | 'right'): Outline {
  const at = side === 'left' ? 0 : leg.alongWall;
  const outer = side === 'left' ? -mantel.thickness : leg.alongWall + mantel.thickness;
  const off = leg.projection;
  return [
    pointOf(leg.frame, outer, 0),
    pointOf(leg.frame, outer, off + mantel.thickness),
    pointOf(leg.frame, at, off),
    pointOf(leg.frame, at, 0),
  ];
}

/** A top or bottom panel as [along, off] in the leg's own measure: along the wall first, then back along the front edge. */
export function panelCorners(leg: PlannedLeg): readonly (readonly [along: number, off: number])[] {
  const { left, right, alongWall, projection } = leg;
  return [
    [-left.panel.atWall, 0],
    [alongWall + right.panel.atWall, 0],
    [alongWall + right.panel.atFront, projection],
    [-left.panel.atFront, projection],
  ];
}

/** The panel in the plan view. */
export function panelOutline(leg: PlannedLeg): Outline {
  return panelCorners(leg).map(([along, off]) => pointOf(leg.frame, along, off));
}

/** Middle of the facing's inner face, for labels. */
export function facingMiddle(leg: PlannedLeg, off: number): Point {
  return pointOf(leg.frame, innerLength(leg) / 2 - leg.left.carcass, off);
}
