import { type Learnt, searchBoards } from './boards/search-boards.ts';
import type { Column } from './column.ts';
import { dive } from './dive.ts';
import { type Pool, addToPool, fitsRest, wholeRest } from './generate.ts';
import type { Instance } from './instance.ts';
import { solveNode } from './node.ts';
import { type Plan, planOf } from './plan.ts';
import { type Store, emptyStore } from './store.ts';
import { roundedCopies, sharesOf, withWaysFixed } from './ways.ts';

/**
 * Lays out a few pieces on a few boards as a small job is solved: column generation, a dive, and the cheapest set of
 * boards, until it is proven that nothing costs less than `cutoff`, or the meter passes `until`. Yields between steps.
 * @param job what is left of a larger job (see leftToLay)
 * @param pool grows by the patterns met
 * @returns the columns of the best layout that costs less than `cutoff`; null when none was found
 */
export function* layOutAgain(
  job: Instance,
  pool: Pool,
  known: Pick<Store, 'unfit' | 'counted'>,
  limits: { readonly cutoff: number; readonly until: number },
): Generator<void, Column[] | null, void> {
  const rest = wholeRest(job);
  const store = emptyStore(known);
  for (const column of pool.columns) if (fitsRest(column, rest)) addToPool(store.pool, column);
  let best: Plan | null = null;
  let cutoff = limits.cutoff;
  const offer = (plan: Plan): void => {
    if (plan.objective >= cutoff) return;
    cutoff = plan.objective;
    best = plan;
  };
  const learnt: Learnt = { cuts: [], refuted: [] };
  const { until } = limits;
  const found = yield* solveNode(job, wholeRest(job), store, [], {
    rounds: 100,
    enough: cutoff,
    until,
    capped: true,
    counts: true,
  });
  if (found.bound < cutoff) {
    learnt.cuts.push(...found.cuts);
    const fixed = withWaysFixed(job, roundedCopies(job, sharesOf(job, found.answer.made)));
    const limits = { first: 1, later: 3, until, fine: true };
    offer(planOf(job, yield* dive(fixed, wholeRest(fixed), store.pool, limits)));
    yield* searchBoards(
      job,
      store,
      learnt,
      found.bound,
      { until, dives: true, workPerSet: 0.3 * (until - job.meter.spent) },
      { offer, cutoff: () => cutoff, raise: () => undefined },
    );
  }
  for (const column of store.pool.columns) addToPool(pool, column);
  return (best as Plan | null)?.columns.slice() ?? null;
}
