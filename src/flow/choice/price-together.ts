import type { PriceBound, Pricer } from '../patterns/strip/strip-pricer.ts';

/** What one board is asked: its best pattern and a bound on it, or a pattern found quickly, rough or among all positions listed. */
export interface PriceAsk {
  readonly pricer: Pricer;
  readonly how: 'bound' | 'rough' | 'fine';
  readonly worth: Float64Array;
  readonly target: number;
  /** By how much a bound may exceed what was found. */
  readonly slack: number;
}

/** Answers all asks, in their order; no answer depends on another, so they may be worked out at the same time. A glance has no bound: Infinity. */
export type PriceTogether = (asks: readonly PriceAsk[]) => readonly PriceBound[];

/** Answers one ask. */
export function priceOne({ pricer, how, worth, target, slack }: PriceAsk): PriceBound {
  if (how === 'bound') return pricer.bound(worth, target, slack);
  return { bound: Infinity, pattern: pricer.glance(worth, target, how === 'fine') };
}

/** One board after another. */
export const priceInTurn: PriceTogether = (asks) => asks.map(priceOne);
