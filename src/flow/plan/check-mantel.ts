import { type Tick, ticks } from '../../base/units/tick.ts';
import type { Leg, Mantel } from './mantel.ts';
import type { PlanProblem, SizeName } from './plan-problem.ts';

/** Degrees; at a sharper turn the facings' miters run out into feathers. */
export const sharpestCorner = 175;

/** The height inside the box: the face less the panels behind it. */
export function hollowHeight(mantel: Mantel): number {
  return mantel.faceHeight - mantel.thickness * (mantel.bottom === 'closed' ? 2 : 1);
}

/** All that is wrong with the sizes themselves, before any geometry. */
export function checkMantel(mantel: Mantel, legs: readonly Leg[]): PlanProblem[] {
  if (legs.length === 0) return [...settings(mantel), { kind: 'no legs' }];
  return [...settings(mantel), ...legs.flatMap((leg, index) => ofLeg(mantel, legs, leg, index))];
}

function settings(mantel: Mantel): PlanProblem[] {
  const { faceHeight, thickness, heightAboveOpening, ledger } = mantel;
  const problems = [
    ...aboveZero('face height', faceHeight, null),
    ...aboveZero('thickness', thickness, null),
  ];
  if (heightAboveOpening !== null && heightAboveOpening < 0)
    problems.push({ kind: 'not above zero', size: 'height above opening', leg: null });
  if (ledger !== null)
    problems.push(
      ...aboveZero('ledger thickness', ledger.thickness, null),
      ...aboveZero('ledger width', ledger.width, null),
    );
  if (problems.length > 0) return problems;
  const hollow = hollowHeight(mantel);
  if (hollow <= 0) return [{ kind: 'no hollow', faceHeight, least: ticks(faceHeight - hollow) }];
  if (ledger !== null && ledger.width > hollow)
    return [{ kind: 'ledger too high', width: ledger.width, room: ticks(hollow) }];
  return [];
}

function ofLeg(mantel: Mantel, legs: readonly Leg[], leg: Leg, index: number): PlanProblem[] {
  const { ledger } = mantel;
  const problems = [
    ...aboveZero('along wall', leg.alongWall, leg.name),
    ...aboveZero('projection', leg.projection, leg.name),
  ];
  if (legs.findIndex(({ name }) => name === leg.name) < index)
    problems.push({ kind: 'leg named twice', leg: leg.name });
  const turn = Math.abs(leg.corner);
  // Written so that NaN is out of range too. The last leg turns to nothing.
  if (index < legs.length - 1 && !(turn >= 1 && turn <= sharpestCorner))
    problems.push({ kind: 'corner out of range', leg: leg.name, corner: leg.corner });
  if (ledger !== null && leg.projection > 0 && ledger.thickness >= leg.projection)
    problems.push({
      kind: 'ledger too thick',
      leg: leg.name,
      thickness: ledger.thickness,
      room: leg.projection,
    });
  return problems;
}

function aboveZero(size: SizeName, value: Tick, leg: string | null): PlanProblem[] {
  return value > 0 ? [] : [{ kind: 'not above zero', size, leg }];
}
