import type { MasterAnswer } from './master.ts';

/** Prices of a master, or a mix of two masters' prices. */
export type Duals = Pick<MasterAnswer, 'kindPrice' | 'groupPrice' | 'sidePrice'>;

/** Two lists of prices mixed, a share of the first; what it lacks at its end counts 0 there. */
export function mixed(first: Float64Array, second: Float64Array, share: number): Float64Array {
  return second.map((each, i) => share * (first[i] ?? 0) + (1 - share) * each);
}

/** Mixes prices; rows that came in since count 0 in the older ones. */
export function between(center: Duals, answer: Duals, share: number): Duals {
  return {
    kindPrice: mixed(center.kindPrice, answer.kindPrice, share),
    groupPrice: mixed(center.groupPrice, answer.groupPrice, share),
    sidePrice: mixed(center.sidePrice, answer.sidePrice, share),
  };
}
