import type { Meter } from '../patterns/meter.ts';
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

/** An answer, and the work it took. */
export interface Priced {
  readonly answer: PriceBound;
  readonly work: number;
}

/** Answers all asks, in their order; no answer depends on another, so they may be worked out at the same time. A glance has no bound: Infinity. */
export type PriceTogether = (asks: readonly PriceAsk[]) => readonly PriceBound[];

function answerOf({ pricer, how, worth, target, slack }: PriceAsk): PriceBound {
  if (how === 'bound') return pricer.bound(worth, target, slack);
  return { bound: Infinity, pattern: pricer.glance(worth, target, how === 'fine') };
}

/**
 * Answers one ask. Its work is summed by itself, and left to the caller to put on the meter: so the meter's last digits
 * are the same whoever did the work, and the same budget ends at the same ask.
 */
export function priceOne(ask: PriceAsk, meter: Meter): Priced {
  const { spent } = meter;
  meter.spent = 0;
  const answer = answerOf(ask);
  const work = meter.spent;
  meter.spent = spent;
  return { answer, work };
}

/** The answers, their work put on the meter one after another. */
export function metered(priced: readonly Priced[], meter: Meter): PriceBound[] {
  for (const { work } of priced) meter.spent += work;
  return priced.map(({ answer }) => answer);
}

/** One board after another. @param meter of the boards' pricers */
export function priceInTurn(meter: Meter): PriceTogether {
  return (asks) =>
    metered(
      asks.map((ask) => priceOne(ask, meter)),
      meter,
    );
}
