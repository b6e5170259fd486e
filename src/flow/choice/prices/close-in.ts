import { mixed } from '../duals.ts';
import { wholeRest } from '../generate.ts';
import { type Solving, raiseOf } from '../standing.ts';
import { type BoundEase, boundAt } from './bound-at.ts';
import { pricesAmongMet } from './prices-among-met.ts';

/** Share that the prices among the patterns met have in those that are asked about, at first; halved when these bound no better. */
const shareOfMet = 0.3;
const leastShare = 0.02;

/** Relative gap between what the patterns met come to and the bound at which it ends. */
const close = 3e-4;

/**
 * Column generation without a master: prices at which the patterns met come out are mixed with those of the best bound (Wentges 1997),
 * and all boards asked exactly at the mixture, which gives a bound and more patterns. Needs the pool's prices, and leaves those of the patterns met.
 * Yields after each few boards; ends when the meter passes `until`.
 */
export function* closeIn(
  { instance, store, standing, stream }: Solving,
  ease: BoundEase,
  until: number,
): Generator<void, void, void> {
  const { pool } = store;
  const { meter } = instance;
  if (pool.prices === null) return;
  const rest = wholeRest(instance);
  let center = pool.prices.kind;
  let { bound } = standing;
  let share = shareOfMet;
  for (;;) {
    const met = pricesAmongMet(instance, rest, pool.columns, center, stream);
    pool.prices = met;
    yield;
    const isClose = met.value - bound <= close * (1 + Math.abs(bound));
    if (isClose || share < leastShare || meter.spent >= until) return;
    const prices = mixed(met.kind, center, share);
    const found = yield* boundAt(instance, rest, pool, prices, ease);
    if (found.bound > bound) {
      ({ bound } = found);
      center = prices;
      raiseOf(instance, standing)(bound);
    } else share /= 2;
  }
}
