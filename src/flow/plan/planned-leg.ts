import { type Tick, ticks } from '../../base/units/tick.ts';
import { miterGain, radians } from '../../trade/miter.ts';
import {
  type PanelEdges,
  type PanelEnd,
  type PanelReach,
  cornerCanButt,
  panelReach,
  runPast,
} from './corner.ts';
import type { EndKind, Leg, Mantel } from './mantel.ts';
import type { Frame } from './point.ts';
import { offSquare } from './wall-corner.ts';

/** One end of a leg. Lengths in ticks, not whole; each is measured from the wall corner outwards, past the leg. */
export interface LegEnd {
  readonly kind: EndKind | 'corner';
  /** Degrees turned there; a cap is a square corner round which nothing projects. 0 where nothing turns. */
  readonly turn: number;
  /** Degrees the facing's end is beveled off square; positive: long point on the show face, negative: on the back. */
  readonly bevel: number;
  /** How far the carcass's front edge runs past the wall corner; negative: it stops short, as behind a cap. */
  readonly carcass: number;
  /** What the outer face of the facing gains over that; negative at an inside corner. */
  readonly gain: number;
  readonly panelEnd: PanelEnd;
  readonly panel: PanelReach;
  /**
   * Where the miter of two panels of unequal depth bends, past the wall corner at the carcass's depth: from there out it follows
   * the facings' own miter. Only where the long edges are mitered.
   */
  readonly bend?: number;
}

/** A leg with its ends worked out. */
export interface PlannedLeg {
  readonly name: string;
  readonly alongWall: Tick;
  /** Of the finished mantel. */
  readonly projection: Tick;
  /** Of the carcass: from the wall to the back of the facing. */
  readonly depth: Tick;
  /** How far off the wall the panels' front edge lies: behind the facing, or at its outer face where the long edges are mitered. */
  readonly panelFront: Tick;
  /** What the panels and caps leave free along the wall, so that the box slips over the breast. */
  readonly gap: Tick;
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

/** The sizes of a leg that its corners are worked out from. */
export type LegSizes = Pick<
  PlannedLeg,
  'name' | 'alongWall' | 'projection' | 'depth' | 'panelFront' | 'gap'
> & {
  readonly turn: number;
};

/**
 * A leg's carcass and the gap behind it. There is a gap along the sides of the breast: every leg that lies round an outside
 * corner from the front's side. @param front index of the front leg
 */
export function legSizes(
  legs: readonly Leg[],
  { thickness, faceJoint }: Mantel,
  front: number,
  fitGap: Tick,
): readonly LegSizes[] {
  return legs.map(({ name, alongWall, projection, turn }, index) => {
    const towardsFront = index < front ? turn : (legs[index - 1]?.turn ?? 0);
    const gap = index !== front && towardsFront > 0 ? fitGap : ticks(0);
    const depth = ticks(projection - thickness);
    const panelFront = faceJoint === 'miter' ? projection : depth;
    return { name, alongWall, projection, depth, panelFront, gap, turn };
  });
}

/** Both ends of a leg. @param front index of the front leg */
export function legEnds(
  mantel: Mantel,
  legs: readonly LegSizes[],
  index: number,
  front: number,
): { left: LegEnd; right: LegEnd } {
  const leg = legs[index]!;
  const before = legs[index - 1];
  const after = legs[index + 1];
  return {
    left:
      before === undefined
        ? freeEnd(mantel, leg, mantel.leftEnd, mantel.leftWallAngle)
        : cornerEnd(mantel, leg, before, before.turn, index <= front),
    right:
      after === undefined
        ? freeEnd(mantel, leg, mantel.rightEnd, mantel.rightWallAngle)
        : cornerEnd(mantel, leg, after, leg.turn, index >= front),
  };
}

function freeEnd(mantel: Mantel, leg: LegSizes, kind: EndKind, wallAngle: number): LegEnd {
  const end = { kind, turn: 0, bevel: 0, carcass: 0, gain: 0, panelEnd: 'square' } as const;
  switch (kind) {
    case 'capped': {
      // The cap's outer face is where the finished mantel ends, so the carcass stops one thickness short of it.
      const short = mantel.thickness;
      // Mitered to the cap, a panel's long point reaches its outer face.
      const panelEnd = mantel.faceJoint === 'miter' ? 0 : -short;
      const panel = { atBack: panelEnd, atFront: panelEnd };
      return { ...end, turn: 90, bevel: 45, carcass: -short, gain: short, panel };
    }
    case 'wall': {
      const bevel = offSquare(wallAngle);
      const lean = Math.tan(radians(bevel));
      const panel = { atBack: leg.gap * lean, atFront: leg.panelFront * lean };
      return { ...end, bevel, carcass: leg.depth * lean, gain: mantel.thickness * lean, panel };
    }
    case 'open':
      return { ...end, panel: { atBack: 0, atFront: 0 } };
  }
}

function cornerEnd(mantel: Mantel, own: LegSizes, other: LegSizes, turn: number, runsOn: boolean): LegEnd {
  // Butted in an inside corner, one panel would have to run into the other's beveled edge.
  const fits = cornerCanButt(turn) && (turn > 0 || mantel.faceJoint === 'butt');
  const butted = mantel.panelJoint === 'butt' && fits;
  const panelEnd = butted ? (runsOn ? 'runs on' : 'butts') : 'miter';
  return {
    kind: 'corner',
    turn,
    bevel: turn / 2,
    carcass: runPast(own.depth, other.depth, turn),
    gain: gainAt(mantel.thickness, turn),
    panelEnd,
    panel: panelReach(panelEnd, panelEdges(own), panelEdges(other), turn),
    ...(panelEnd === 'miter' && mantel.faceJoint === 'miter' && own.depth !== other.depth
      ? { bend: runPast(own.depth, other.depth, turn) }
      : {}),
  };
}

/** The panels lie between the gap along the wall and the facing, or its outer face. */
export function panelEdges({ gap, panelFront }: Pick<PlannedLeg, 'gap' | 'panelFront'>): PanelEdges {
  return { back: gap, front: panelFront };
}

/** t tan(φ/2), exactly one thickness at a square corner. */
function gainAt(thickness: number, turn: number): number {
  const gain = Math.abs(turn) === 90 ? thickness : miterGain(thickness, Math.abs(turn) / 2);
  return turn < 0 ? -gain : gain;
}
