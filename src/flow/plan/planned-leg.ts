import type { Tick } from '../../base/units/tick.ts';
import { miterGain } from '../../trade/miter.ts';
import { type PanelEnd, type PanelReach, cornerCanButt, panelReach, runPast } from './corner.ts';
import type { EndKind, Leg, Mantel } from './mantel.ts';
import type { Frame } from './point.ts';

/** One end of a leg. Lengths in ticks, not whole; each is measured from the wall corner outwards, past the leg. */
export interface LegEnd {
  readonly kind: EndKind | 'corner';
  /** Degrees turned there; a cap is a square corner round which nothing projects. 0 where nothing turns. */
  readonly turn: number;
  /** How far the carcass's front edge runs past the wall corner. */
  readonly carcass: number;
  /** What the outer face of the facing gains over that; negative at an inside corner. */
  readonly gain: number;
  readonly panelEnd: PanelEnd;
  readonly panel: PanelReach;
}

/** A leg with its ends worked out. */
export interface PlannedLeg {
  readonly name: string;
  readonly alongWall: Tick;
  /** Of the carcass: the facing stands before it. */
  readonly projection: Tick;
  readonly left: LegEnd;
  readonly right: LegEnd;
  readonly frame: Frame;
}

/** Length of the facing's inner face: the carcass's front edge. */
export function innerLength(leg: PlannedLeg): number {
  return leg.left.carcass + leg.alongWall + leg.right.carcass;
}

/** Length of the facing's outer face, the one that shows. */
export function outerLength(leg: PlannedLeg): number {
  return leg.left.gain + innerLength(leg) + leg.right.gain;
}

/** From long point to long point: at an inside corner the long point lies on the back. */
export function longPointLength(leg: PlannedLeg): number {
  return Math.max(0, leg.left.gain) + innerLength(leg) + Math.max(0, leg.right.gain);
}

/**
 * The front: the longest leg along its wall; of several the one nearest the middle, and then the first.
 * Panels are butted so that the one nearer the front runs on.
 */
export function frontOf(legs: readonly Leg[]): number {
  const middle = (legs.length - 1) / 2;
  let best = 0;
  legs.forEach(({ alongWall }, index) => {
    const longest = legs[best]?.alongWall ?? 0;
    const nearer = Math.abs(index - middle) < Math.abs(best - middle);
    if (alongWall > longest || (alongWall === longest && nearer)) best = index;
  });
  return best;
}

/** Both ends of a leg. @param front index of the front leg */
export function legEnds(
  mantel: Mantel,
  legs: readonly Leg[],
  index: number,
  front: number,
): { left: LegEnd; right: LegEnd } {
  const leg = legs[index]!;
  const before = legs[index - 1];
  const after = legs[index + 1];
  return {
    left:
      before === undefined
        ? freeEnd(mantel, mantel.leftEnd)
        : cornerEnd(mantel, leg, before, before.corner, index <= front),
    right:
      after === undefined
        ? freeEnd(mantel, mantel.rightEnd)
        : cornerEnd(mantel, leg, after, leg.corner, index >= front),
  };
}

function freeEnd(mantel: Mantel, kind: EndKind): LegEnd {
  const capped = kind === 'capped';
  return {
    kind,
    turn: capped ? 90 : 0,
    carcass: 0,
    gain: capped ? mantel.thickness : 0,
    panelEnd: 'square',
    panel: { atWall: 0, atFront: 0 },
  };
}

function cornerEnd(mantel: Mantel, own: Leg, other: Leg, turn: number, runsOn: boolean): LegEnd {
  const butted = mantel.panelJoint === 'butt' && cornerCanButt(turn);
  const panelEnd = butted ? (runsOn ? 'runs on' : 'butts') : 'miter';
  return {
    kind: 'corner',
    turn,
    carcass: runPast(own.projection, other.projection, turn),
    gain: gainAt(mantel.thickness, turn),
    panelEnd,
    panel: panelReach(panelEnd, own.projection, other.projection, turn),
  };
}

/** t tan(φ/2), exactly one thickness at a square corner. */
function gainAt(thickness: number, turn: number): number {
  const gain = Math.abs(turn) === 90 ? thickness : miterGain(thickness, Math.abs(turn) / 2);
  return turn < 0 ? -gain : gain;
}
