import type { Column } from './column.ts';
import { wholeRest } from './generate.ts';
import { type GreedyWay, greedy } from './greedy.ts';
import { planOf } from './plan.ts';
import type { Solving } from './standing.ts';

/** A greedy layout of the whole job at these worths, taken as it stands board by board: so it may be ended early. */
export function* firstLayout(
  { instance, store, standing }: Solving,
  worth: Float64Array,
  way: GreedyWay,
): Generator<void, void, void> {
  const columns: Column[] = [];
  for (const step of greedy(instance, wholeRest(instance), store.pool, worth, way, columns)) {
    standing.best = planOf(instance, columns);
    yield step;
  }
}
