import { type Result, failure, success } from '../../base/result/result.ts';
import { type Tick, longestLength } from '../../base/units/tick.ts';
import { ticksUp } from '../../trade/miter.ts';
import { checkMantel } from './check-mantel.ts';
import { crossingSides } from './crossing.ts';
import { facingPieces } from './facing-pieces.ts';
import { ledgerPieces } from './ledger-pieces.ts';
import type { Leg, Mantel } from './mantel.ts';
import { outerPath, wallPath } from './outline.ts';
import { panelPieces } from './panel-pieces.ts';
import type { PlanPiece } from './piece.ts';
import type { PlanProblem } from './plan-problem.ts';
import {
  type LegSizes,
  type PlannedLeg,
  frontOf,
  innerLength,
  legEnds,
  legSizes,
  longPointLength,
  outerLength,
} from './planned-leg.ts';
import { type Point, pointOf } from './point.ts';
import { type WallRoom, noRoom } from './wall-contacts.ts';

/** A mantel worked out: its legs, and every piece of wood in it. */
export interface MantelPlan {
  readonly mantel: Mantel;
  readonly legs: readonly PlannedLeg[];
  /** Index of the front leg, the one that is looked at. */
  readonly front: number;
  /** Facing first, in walking order (cap, facings, cap); then tops, bottoms, ledgers. */
  readonly pieces: readonly PlanPiece[];
  readonly room: WallRoom;
}

/** What the planner may know beyond the mantel itself. */
export interface PlanOptions {
  /** The widest usable board at hand: decides whether a facing must be glued up, and nothing else. */
  readonly widestBoard?: Tick;
  /** What is left free at the walls, and on the wood there; nothing when not given. */
  readonly room?: WallRoom;
}

/**
 * Works out a box mantel: legs and settings to pieces.
 *
 * What is given is of the wall or of the finished mantel: the facing's thickness is taken off a projection, and a cap's off the
 * length along the wall, to come to the carcass. At a corner turned by φ each facing gains thickness × tan(φ/2) over the carcass; a cap is a square corner round which
 * nothing projects. So a facing with one mitered end at a square corner gains one thickness, with two it gains two.
 * @returns all problems that the sizes have; none of them, then those of the geometry
 */
export function planMantel(
  mantel: Mantel,
  givenLegs: readonly Leg[],
  options: PlanOptions = {},
): Result<MantelPlan, PlanProblem> {
  const given = givenLegs.map((leg, index) =>
    leg.name.trim() === '' ? { ...leg, name: `leg ${index + 1}` } : leg,
  );
  const { widestBoard = null, room = noRoom } = options;
  const { fitGap, scribe } = room;
  const problems = checkMantel(mantel, given, fitGap);
  if (problems.length > 0) return failure(problems);
  const front = frontOf(given);
  const legs = plannedLegs(mantel, legSizes(given, mantel, front, fitGap), front);
  const impossible = impossibleLegs(legs);
  if (impossible.length > 0) return failure(impossible);
  const crossing = crossingLegs(legs);
  if (crossing !== null) return failure([crossing]);
  const pieces = [
    ...facingPieces(mantel, legs, { front, widestBoard, scribe }),
    ...panelPieces(mantel, legs, scribe),
    ...ledgerPieces(mantel, legs),
  ];
  return success({ mantel, legs, front, pieces, room });
}

/** Legs with their ends and places; the front leg lies level in the plan view and begins at its origin. */
function plannedLegs(mantel: Mantel, given: readonly LegSizes[], front: number): PlannedLeg[] {
  const legs: PlannedLeg[] = [];
  let heading = -given.slice(0, front).reduce((sum, { turn }) => sum + turn, 0);
  let origin: Point = { x: 0, y: 0 };
  given.forEach(({ turn, ...sizes }, index) => {
    const frame = { origin, heading };
    legs.push({ ...sizes, ...legEnds(mantel, given, index, front), frame });
    origin = pointOf(frame, sizes.alongWall, 0);
    heading += turn;
  });
  const { x, y } = legs[front]!.frame.origin;
  return legs.map((leg) => ({
    ...leg,
    frame: { ...leg.frame, origin: { x: leg.frame.origin.x - x, y: leg.frame.origin.y - y } },
  }));
}

/** A leg whose facing or panel has no length left anywhere, or too much. */
function impossibleLegs(legs: readonly PlannedLeg[]): PlanProblem[] {
  return legs.flatMap((leg): PlanProblem[] => {
    const { left, right, alongWall } = leg;
    const reach = (edge: 'atBack' | 'atFront'): number => left.panel[edge] + alongWall + right.panel[edge];
    const least = Math.min(innerLength(leg), outerLength(leg), reach('atBack'), reach('atFront'));
    // A tick of wood is no wood; and below it rounding decides.
    if (least < 1) return [{ kind: 'leg too short', leg: leg.name, lacking: ticksUp(Math.max(1, -least)) }];
    if (longPointLength(leg) > longestLength)
      return [{ kind: 'piece too long', piece: `${leg.name} facing` }];
    return [];
  });
}

/** Whether the mantel runs into itself, as seen from above. */
function crossingLegs(legs: readonly PlannedLeg[]): PlanProblem | null {
  const wall = wallPath(legs);
  const outer = [...outerPath(legs)].reverse();
  const sides = crossingSides([...wall, ...outer]);
  if (sides === null) return null;
  const [leg, other] = sides.map((side) => legs[legOfSide(side, legs.length, outer.length, legs)]!.name);
  return { kind: 'legs cross', leg: leg!, other: other! };
}

/** Which leg a side of the closed outline belongs to: walls left to right, then the faces right to left. */
function legOfSide(side: number, count: number, outerCount: number, legs: readonly PlannedLeg[]): number {
  if (side < count) return side;
  if (side === count || side === count + outerCount) return side === count ? count - 1 : 0;
  const capped = legs.at(-1)!.right.kind === 'capped' ? 1 : 0;
  const back = side - count - 1 - capped;
  return Math.min(count - 1, Math.max(0, count - 1 - back));
}
