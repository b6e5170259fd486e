import { type Tick, ticks } from '../../base/units/tick.ts';
import type { Leg, Mantel } from './mantel.ts';
import type { PlanProblem, SizeName } from './plan-problem.ts';

/** Degrees; at a sharper turn the facings' miters run out into feathers. */
export const sharpestCorner = 175;

/** Degrees; an end that dies into a more slanting wall is no end but a corner. */
export const leastWallAngle = 45;

/** The height inside the box: the face less the panels behind it. */
export function hollowHeight(mantel: Mantel): number {
  return mantel.faceHeight - mantel.thickness * (mantel.bottom === 'closed' ? 2 : 1);
}

/** All that is wrong with the sizes themselves, before any geometry. */
export function checkMantel(mantel: Mantel, legs: readonly Leg[], fitGap: Tick): PlanProblem[] {
  if (legs.length === 0) return [...settings(mantel), { kind: 'no legs' }];
  return [...settings(mantel), ...legs.flatMap((_, index) => ofLeg(mantel, legs, index, fitGap))];
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
  for (const side of ['left', 'right'] as const) {
    const angle = mantel[`${side}WallAngle`];
    // Written so that NaN is out of range too.
    if (mantel[`${side}End`] === 'wall' && !(angle >= leastWallAngle && angle <= 180 - leastWallAngle))
      problems.push({ kind: 'side wall out of range', side, angle });
  }
  if (problems.length > 0) return problems;
  const hollow = hollowHeight(mantel);
  if (hollow <= 0) return [{ kind: 'no hollow', faceHeight, least: ticks(faceHeight - hollow) }];
  if (ledger !== null && ledger.width > hollow)
    return [{ kind: 'ledger too high', width: ledger.width, room: ticks(hollow) }];
  return [];
}

function ofLeg(mantel: Mantel, legs: readonly Leg[], index: number, fitGap: Tick): PlanProblem[] {
  const leg = legs[index]!;
  const { ledger } = mantel;
  const problems = [
    ...aboveZero('along wall', leg.alongWall, leg.name),
    ...aboveZero('projection', leg.projection, leg.name),
  ];
  if (legs.findIndex(({ name }) => name === leg.name) < index)
    problems.push({ kind: 'leg named twice', leg: leg.name });
  const turn = Math.abs(leg.turn);
  // Written so that NaN is out of range too. The last leg turns to nothing.
  if (index < legs.length - 1 && !(turn >= 1 && turn <= sharpestCorner))
    problems.push({ kind: 'corner out of range', leg: leg.name, turn: leg.turn });
  if (problems.length > 0 || mantel.thickness <= 0) return problems;
  const room = ticks(leg.projection - mantel.thickness);
  if (room <= fitGap)
    problems.push({ kind: 'no depth', leg: leg.name, least: ticks(mantel.thickness + fitGap) });
  else if (ledger !== null && ledger.thickness >= room)
    problems.push({ kind: 'ledger too thick', leg: leg.name, thickness: ledger.thickness, room });
  return problems;
}

function aboveZero(size: SizeName, value: Tick, leg: string | null): PlanProblem[] {
  return value > 0 ? [] : [{ kind: 'not above zero', size, leg }];
}
