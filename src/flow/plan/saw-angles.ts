import { sawSetting, steepestCommonTilt } from '../../trade/miter.ts';
import { panelAngle } from './panel-pieces.ts';
import type { MantelPlan } from './plan-mantel.ts';
import type { LegEnd, PlannedLeg } from './planned-leg.ts';
import { sideWallText, wallCornerText } from './wall-corner.ts';

/** One cut off square at the end of a piece. */
export interface AngledCut {
  readonly piece: string;
  readonly side: 'left' | 'right';
  /** Off square, above 0. */
  readonly degrees: number;
  /** Where the long point lies: on which face for a bevel, at which edge for a miter across the width. */
  readonly longPoint: 'show face' | 'back' | 'front edge' | 'wall edge';
}

/** The saw angles of one corner, from left to right. */
export interface CornerAngles {
  /** `left return to front`, `left cap to left return`. */
  readonly where: string;
  /** The corner of the masonry as a bevel gauge reads it, `92°`; null at a cap, which goes round no wall. */
  readonly wall: string | null;
  /** Degrees turned; negative at an inside corner; 0 where an end dies into a side wall. */
  readonly turn: number;
  /** The facing ends that meet there, or the one that dies into the wall: bevels through the thickness. */
  readonly bevels: readonly AngledCut[];
  /** Whether common saws do not tilt so far. */
  readonly steep: boolean;
  /** Panel ends that are not square, of the top; the bottom's are the same. */
  readonly panels: readonly AngledCut[];
}

/** Every corner of the mantel, and every end in a wall out of square, with the angles its pieces are cut at. */
export function sawAngles(plan: MantelPlan): CornerAngles[] {
  const { legs } = plan;
  const corners: CornerAngles[] = [];
  const first = legs[0]!;
  const last = legs.at(-1)!;
  if (first.left.kind === 'wall' && first.left.bevel !== 0) corners.push(sideWall('left', first));
  if (first.left.kind === 'capped') corners.push(capCorner('left cap', 'left', first));
  legs.slice(1).forEach((leg, index) => corners.push(wallCorner(legs[index]!, leg)));
  if (last.right.kind === 'capped') corners.push(capCorner('right cap', 'right', last));
  if (last.right.kind === 'wall' && last.right.bevel !== 0) corners.push(sideWall('right', last));
  return corners;
}

function wallCorner(before: PlannedLeg, after: PlannedLeg): CornerAngles {
  const { turn } = before.right;
  return {
    where: `${before.name} to ${after.name}`,
    wall: wallCornerText(turn),
    turn,
    bevels: [
      bevel(`${before.name} facing`, 'right', before.right),
      bevel(`${after.name} facing`, 'left', after.left),
    ],
    steep: sawSetting(turn) > steepestCommonTilt,
    panels: [...panelCut(before, 'right'), ...panelCut(after, 'left')],
  };
}

function capCorner(cap: string, side: 'left' | 'right', leg: PlannedLeg): CornerAngles {
  const capBevel = bevel(cap, side === 'left' ? 'right' : 'left', leg[side]);
  const facingBevel = bevel(`${leg.name} facing`, side, leg[side]);
  return {
    where: side === 'left' ? `${cap} to ${leg.name}` : `${leg.name} to ${cap}`,
    wall: null,
    turn: 90,
    bevels: side === 'left' ? [capBevel, facingBevel] : [facingBevel, capBevel],
    steep: false,
    panels: [],
  };
}

function sideWall(side: 'left' | 'right', leg: PlannedLeg): CornerAngles {
  return {
    where: side === 'left' ? `side wall to ${leg.name}` : `${leg.name} to side wall`,
    wall: sideWallText(leg[side].bevel),
    turn: 0,
    bevels: [bevel(`${leg.name} facing`, side, leg[side])],
    steep: false,
    panels: panelCut(leg, side),
  };
}

function bevel(piece: string, side: 'left' | 'right', end: LegEnd): AngledCut {
  return { piece, side, degrees: Math.abs(end.bevel), longPoint: end.bevel > 0 ? 'show face' : 'back' };
}

function panelCut(leg: PlannedLeg, side: 'left' | 'right'): AngledCut[] {
  const angle = panelAngle(leg, side);
  if (Math.abs(angle) < 0.05) return [];
  const longPoint = angle > 0 ? 'front edge' : 'wall edge';
  return [{ piece: `${leg.name} top`, side, degrees: Math.abs(angle), longPoint }];
}
