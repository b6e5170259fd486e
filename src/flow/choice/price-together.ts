import type { Meter } from '../patterns/meter.ts';
import type { Counted } from '../patterns/strip/counted/counting.ts';
import type { Placement, PlatePattern } from '../patterns/plate.ts';
import type { PriceBound, Pricer } from '../patterns/strip/strip-pricer.ts';

/** What one board is asked: its best pattern and a bound on it, or a pattern found quickly, rough or among all positions listed. */
export interface PriceAsk {
  readonly pricer: Pricer;
  readonly how: 'bound' | 'rough' | 'fine';
  readonly worth: Float64Array;
  readonly target: number;
  /** By how much a bound may exceed what was found, or a better pattern what a glance finds. */
  readonly slack: number;
  /** Of a bound: most section starts opened for it, which then may exceed what was found by more; left out: as many as it takes. */
  readonly mostStarts?: number;
  /** Of a bound: whether it is to be close below the target too. */
  readonly isClose?: boolean;
  /** Of a bound: whether a pattern that pays will do, and the bound need only hold then. */
  readonly mayBeLoose?: boolean;
  /** Of a bound: kinds that the pattern may not use more often than said. */
  readonly counted?: readonly Counted[];
  /** Where given, a pattern within these caps is looked for instead. */
  readonly caps?: Int32Array;
  /**
   * Whether to glance first: the uncapped search is far quicker. What its pattern has too many of is left out, and only
   * if that leaves too little, one is sought that keeps the caps from the start.
   */
  readonly glanceFirst?: boolean;
}

/** An answer, and the work it took. */
export interface Priced {
  readonly answer: PriceBound;
  readonly work: number;
}

/** Answers all asks, in their order; no answer depends on another, so they may be worked out at the same time. A glance has no bound: Infinity. */
export type PriceTogether = (asks: readonly PriceAsk[]) => readonly PriceBound[];

function answerOf(ask: PriceAsk): PriceBound {
  const { pricer, how, worth, target, slack, mostStarts, isClose, mayBeLoose, counted, caps } = ask;
  if (how === 'bound')
    return pricer.bound(worth, target, { slack, mostStarts, isClose, mayBeLoose, counted });
  const isFine = how === 'fine';
  const pattern =
    caps === undefined ? pricer.glance(worth, target, isFine, slack) : capped(ask, caps, isFine);
  return { bound: Infinity, pattern };
}

function capped(
  { pricer, worth, target, glanceFirst }: PriceAsk,
  caps: Int32Array,
  isFine: boolean,
): PlatePattern | null {
  if (glanceFirst === true) {
    const free = pricer.glance(worth, target, isFine);
    if (free === null) return null;
    const placements = withinCaps(free.placements, caps);
    const value = placements.reduce((sum, { kind }) => sum + worth[kind]!, 0);
    if (placements.length === free.placements.length || value > target) return { placements, value };
  }
  return pricer.pattern(worth, caps, target, isFine);
}

/** The placements without those that are more than the caps of their kind. */
export function withinCaps(placements: readonly Placement[], caps: Int32Array): Placement[] {
  const left = caps.slice();
  return placements.filter(({ kind }) => (left[kind] = left[kind]! - 1) >= 0);
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

/** Boards asked between two yields: an exact pass through a hundred boards takes many seconds, one of very many boards with many kinds half a second for each. */
const boardsALot = 8;

/** All answers, in the order of the asks. Yields between lots. */
export function* priceInLots(
  price: PriceTogether,
  asks: readonly PriceAsk[],
): Generator<void, PriceBound[], void> {
  const answers: PriceBound[] = [];
  for (let from = 0; from < asks.length; from += boardsALot) {
    if (from > 0) yield;
    answers.push(...price(asks.slice(from, from + boardsALot)));
  }
  return answers;
}
