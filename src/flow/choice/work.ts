import { isByPrices } from './by-prices.ts';
import type { Instance } from './instance.ts';
import { piecesIn } from './kinds.ts';

/** Work that an effort of 1 allows: a base, and more for every piece. One unit is about 25 ns. */
const workPerSolve = 1.6e8;
const workPerPiece = 4.5e6;

/** The same with many boards, where no simplex takes time beside the work that is counted. */
const workPerPieceOfMany = 11e6;

/** Work that a solve may do. */
export function workFor(instance: Instance, effort: number): number {
  const perPiece = isByPrices(instance) ? workPerPieceOfMany : workPerPiece;
  return Math.max(0.05, effort) * (workPerSolve + piecesIn(instance.kinds) * perPiece);
}
