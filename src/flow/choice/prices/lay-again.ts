import type { Random } from '../../../base/random/random.ts';
import { greedy, tastedPrices } from '../greedy.ts';
import { boardsToClear, dearness, nearby } from '../improve.ts';
import type { Instance } from '../instance.ts';
import { type Plan, planOf, restAfter } from '../plan.ts';
import type { Store } from '../store.ts';

/** Most boards cleared at once. */
const mostCleared = 12;

/** By what share of the best a layout may be dearer and still be gone on from, at the start; it shrinks to nothing by the end. */
const dearerBy = 6e-3;

/** What a try costs beside its pricing, in work, and for each group: what was met of it is looked through. */
const workPerTry = 60_000;
const workPerGroup = 3_000;

/**
 * Neighbourhood search for jobs of many boards, at the prices of their bound: boards that lose most against the prices are cleared the
 * likelier, and laid out again by a greedy at prices a little changed, mostly from patterns met before. A layout a little dearer than
 * the best is gone on from as well, the less so the nearer the end (threshold accepting, Dueck and Scheuer 1990).
 * Needs the pool's prices. Yields after each board laid and each try; ends when the meter passes `until`.
 */
export function* layAgain(
  instance: Instance,
  start: Plan,
  store: Store,
  random: Random,
  until: number,
  better: (plan: Plan) => boolean,
): Generator<void, void, void> {
  const { pool } = store;
  const { meter } = instance;
  const begun = meter.spent;
  let best = start.objective;
  let incumbent = start;
  while (meter.spent < until && pool.prices !== null && incumbent.columns.length > 0) {
    meter.spent += workPerTry + workPerGroup * instance.groups.length;
    const cleared = boardsToClear(instance, incumbent, pool, mostCleared, random);
    const kept = incumbent.columns.filter((_, index) => !cleared.has(index));
    const rest = nearby(restAfter(instance, kept), incumbent.columns, dearness(instance, pool), random);
    const prices = tastedPrices(pool.prices.kind, random);
    const found = yield* greedy(instance, rest, pool, prices, { fine: true, fromPool: true });
    const plan = planOf(instance, [...kept, ...found]);
    const share = Math.max(0, (until - meter.spent) / (until - begun));
    const slack = 1e-9 * (1 + Math.abs(best));
    if (plan.objective < best - slack) {
      best = plan.objective;
      incumbent = plan;
      if (better(plan)) return;
    } else if (plan.objective <= best * (1 + dearerBy * share)) incumbent = plan;
    yield;
  }
}
