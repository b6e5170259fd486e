import { type Tick, inches } from '../../src/base/units/tick.ts';
import type { Leg, Mantel } from '../../src/flow/plan/mantel.ts';
import { type MantelPlan, type PlanOptions, planMantel } from '../../src/flow/plan/plan-mantel.ts';
import type { PlanPiece } from '../../src/flow/plan/piece.ts';

/** A plain box mantel of our own: 6 1/2 in face of 3/4 in boards, all ends into walls, butted panels. */
export const plainMantel: Mantel = {
  faceHeight: inches(6.5),
  thickness: inches(0.75),
  bottom: 'closed',
  leftEnd: 'wall',
  rightEnd: 'wall',
  leftWallAngle: 90,
  rightWallAngle: 90,
  panelJoint: 'butt',
  faceJoint: 'butt',
  heightAboveOpening: inches(13.5),
  ledger: { thickness: inches(0.75), width: inches(3) },
  species: 'black cherry',
};

/** A leg in inches, of the finished mantel: its carcass is 3/4 less deep. @param turn degrees turned to the next one */
export function leg(name: string, alongWall: number, projection: number, turn = 90): Leg {
  return { name, alongWall: inches(alongWall), projection: inches(projection), turn };
}

/** A plan that must succeed. */
export function planned(mantel: Partial<Mantel>, legs: readonly Leg[], options?: PlanOptions): MantelPlan {
  const result = planMantel({ ...plainMantel, ...mantel }, legs, options);
  if (!result.ok) throw new Error(`not planned: ${JSON.stringify(result.problems)}`);
  return result.value;
}

/** A piece that must be there. */
export function pieceOf(plan: MantelPlan, name: string): PlanPiece {
  const found = plan.pieces.find((piece) => piece.name === name);
  if (found === undefined) throw new Error(`no piece ${name}`);
  return found;
}

/** Length and width in inches. */
export function sizeOf(plan: MantelPlan, name: string): [length: number, width: number] {
  const { length, width } = pieceOf(plan, name);
  return [length / inches(1), width / inches(1)];
}

/** Inches, rounded up to a whole tick as the planner rounds parts. */
export function upTicks(inchesLong: number): Tick {
  return Math.ceil(inchesLong * inches(1) - 1e-6) as Tick;
}
