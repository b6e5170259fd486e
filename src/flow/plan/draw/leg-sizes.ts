import type { LengthStyle } from '../../../base/units/format-length.ts';
import { ticks } from '../../../base/units/tick.ts';
import { type Markup, svg } from '../../../base/markup/element.ts';
import type { MantelPlan } from '../plan-mantel.ts';
import { type LegEnd, type PlannedLeg, outerLength } from '../planned-leg.ts';
import { pointOf } from '../point.ts';
import { dimension } from './dimension.ts';
import { bodyType, lettered, sizeOnDrawing, uprightAngle } from './lettering.ts';
import { type Paper, type Spot, spotOf } from './paper.ts';
import { wallBand } from './wall-band.ts';

/** Dimension lines of the facings run this far outside them, drawing units. */
export const dimensionAway = 80;
const faceTextAway = 34;

/** The face, the wall and the depth of one leg. */
export function legSizes(plan: MantelPlan, index: number, paper: Paper, style: LengthStyle): Markup {
  const leg = plan.legs[index]!;
  const size = (length: number): string => sizeOnDrawing(ticks(Math.round(length)), style);
  const outer = leg.projection;
  const spot = (along: number, off: number): Spot => spotOf(paper, pointOf(leg.frame, along, off));
  const [start, end] = [spot(0, 0), spot(leg.alongWall, 0)];
  const turned = uprightAngle(end.x - start.x, end.y - start.y);
  const wallSpot = spot(openMiddle(leg, paper), -(wallBand + bodyType) * paper.unit);
  // Near the free end of an end leg, clear of joints; should the size not fit on its line, it goes to the middle's side.
  const atLeft = index === 0 && plan.legs.length > 1;
  const depthAt = leg.alongWall * (atLeft ? 0.27 : 0.73);
  const depth = [spot(depthAt, 0), spot(depthAt, outer)] as const;
  const [near, far] = atLeft ? [depth[1], depth[0]] : depth;
  return svg(
    'g',
    { 'aria-label': `sizes of ${leg.name}` },
    faceSize(leg, outer, spot, size(outerLength(leg)), turned, paper),
    dimension(near, far, 0, size(outer)),
    lettered(wallWords(leg, size), wallSpot, { turned }),
  );
}

/** How long the wall is, or where along it the finished mantel ends, and the gap behind. */
function wallWords(leg: PlannedLeg, size: (length: number) => string): string {
  const isFree = leg.left.kind !== 'corner' || leg.right.kind !== 'corner';
  return `${isFree ? 'end at' : 'wall'} ${size(leg.alongWall)}, gap ${size(leg.gap)}`;
}

/**
 * The length of the face that shows. In an inside corner the dimension lines of two legs would cross, so there the size stands
 * beside the face without one.
 */
function faceSize(
  leg: PlannedLeg,
  outer: number,
  spot: (along: number, off: number) => Spot,
  text: string,
  turned: number,
  paper: Paper,
): Markup {
  const from = -leg.left.carcass - leg.left.gain;
  const to = leg.alongWall + leg.right.carcass + leg.right.gain;
  if (leg.left.turn >= 0 && leg.right.turn >= 0)
    return dimension(spot(from, outer), spot(to, outer), dimensionAway, text);
  const middle = spot((from + to) / 2, outer + faceTextAway * paper.unit);
  return lettered(`face ${text}`, middle, { turned });
}

/** Middle of what the hatched bands of the neighbouring walls leave free behind a wall. */
function openMiddle(leg: PlannedLeg, paper: Paper): number {
  const taken = (end: LegEnd): number => (end.kind === 'corner' && end.turn > 0 ? wallBand * paper.unit : 0);
  const [from, to] = [taken(leg.left), leg.alongWall - taken(leg.right)];
  return from < to ? (from + to) / 2 : leg.alongWall / 2;
}
