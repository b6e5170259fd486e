import { sawSetting, steepestCommonTilt } from '../../trade/miter.ts';
import { panelAngle } from './panel-pieces.ts';
import type { MantelPlan } from './plan-mantel.ts';
import type { LegEnd, PlannedLeg } from './planned-leg.ts';

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
  /** Degrees turned; negative at an inside corner. */
  readonly turn: number;
  /** The two facing ends that meet: bevels through the thickness, both half the turn. */
  readonly bevels: readonly AngledCut[];
  /** Whether common saws do not tilt so far. */
  readonly steep: boolean;
  /** Panel ends that are not square, of the top; the bottom's are the same. */
  readonly panels: readonly AngledCut[];
}

/** Every corner of the mantel with the angles its pieces are cut at. */
export function sawAngles(plan: MantelPlan): CornerAngles[] {
  const { legs } = plan;
  const corners: CornerAngles[] = [];
  const first = legs[0]!;
  const last = legs.at(-1)!;
  if (first.left.kind === 'capped') corners.push(capCorner('left cap', 'left', first));
  legs.slice(1).forEach((leg, index) => corners.push(wallCorner(legs[index]!, leg)));
  if (last.right.kind === 'capped') corners.push(capCorner('right cap', 'right', last));
  return corners;
}

function wallCorner(before: PlannedLeg, after: PlannedLeg): CornerAngles {
  const { turn } = before.right;
  return {
    where: `${before.name} to ${after.name}`,
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
    turn: 90,
    bevels: side === 'left' ? [capBevel, facingBevel] : [facingBevel, capBevel],
    steep: false,
    panels: [],
  };
}

function bevel(piece: string, side: 'left' | 'right', end: LegEnd): AngledCut {
  return { piece, side, degrees: sawSetting(end.turn), longPoint: end.turn > 0 ? 'show face' : 'back' };
}

function panelCut(leg: PlannedLeg, side: 'left' | 'right'): AngledCut[] {
  const angle = panelAngle(leg, side);
  if (Math.abs(angle) < 0.05) return [];
  const longPoint = angle > 0 ? 'front edge' : 'wall edge';
  return [{ piece: `${leg.name} top`, side, degrees: Math.abs(angle), longPoint }];
}
