import { isByPrices, isOfVeryMany } from './by-prices.ts';
import { type Instance, isOfGeneralEngine, piecesWanted } from './instance.ts';

/** Work that an effort of 1 allows: a base, and more for every piece. A unit is 7 to 25 ns, the more the larger the share of the simplex. */
const workPerSolve = 1.6e8;
const workPerPiece = 4.5e6;

/** Most groups of a small job, which is solved among all positions from the start. */
const few = 20;

/** Whether a job has so few groups. */
export function isFew({ groups }: Instance): boolean {
  return groups.length <= few;
}

/** How many times as much it is where the general engine prices the boards, which takes longer over each. */
const timesForGeneral = 2;

/** Share of it with more groups, where most of the time goes to the simplex and not to the work that is counted. */
const shareOfSome = 0.7;

/** The same with many boards, where no simplex takes time beside the work that is counted; and with very many, where each is asked for a few pieces. */
const workPerPieceOfMany = 15e6;
const workPerPieceOfVeryMany = 17e6;

/** Work that a solve may do. */
export function workFor(instance: Instance, effort: number): number {
  const pieces = piecesWanted(instance);
  const least = Math.max(0.05, effort);
  if (isByPrices(instance)) {
    const perPiece = isOfVeryMany(instance) ? workPerPieceOfVeryMany : workPerPieceOfMany;
    return least * (workPerSolve + pieces * perPiece);
  }
  const share = (isFew(instance) ? 1 : shareOfSome) * (isOfGeneralEngine(instance) ? timesForGeneral : 1);
  return share * least * (workPerSolve + pieces * workPerPiece);
}
