import { isByPrices, isOfVeryMany } from './by-prices.ts';
import type { Instance } from './instance.ts';
import { piecesIn } from './kinds.ts';

/** Work that an effort of 1 allows: a base, and more for every piece. One unit is about 25 ns. */
const workPerSolve = 1.6e8;
const workPerPiece = 4.5e6;

/** The same with many boards, where no simplex takes time beside the work that is counted; and with very many, where each is asked for a few pieces. */
const workPerPieceOfMany = 11e6;
const workPerPieceOfVeryMany = 15e6;

/** Work that a solve may do. */
export function workFor(instance: Instance, effort: number): number {
  const ofMany = isOfVeryMany(instance) ? workPerPieceOfVeryMany : workPerPieceOfMany;
  const perPiece = isByPrices(instance) ? ofMany : workPerPiece;
  return Math.max(0.05, effort) * (workPerSolve + piecesIn(instance.kinds) * perPiece);
}
