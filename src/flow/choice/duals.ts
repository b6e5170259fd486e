import type { MasterAnswer } from './master.ts';

/** Prices of a master, or a mix of two masters' prices. */
export type Duals = Pick<MasterAnswer, 'kindPrice' | 'groupPrice' | 'sidePrice'>;

/** Mixes prices; rows that came in since count 0 in the older ones. */
export function between(center: Duals, answer: Duals, share: number): Duals {
  const mix = (old: Float64Array, now: Float64Array): Float64Array =>
    now.map((each, i) => share * (old[i] ?? 0) + (1 - share) * each);
  return {
    kindPrice: mix(center.kindPrice, answer.kindPrice),
    groupPrice: mix(center.groupPrice, answer.groupPrice),
    sidePrice: mix(center.sidePrice, answer.sidePrice),
  };
}
