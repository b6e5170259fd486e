import { prepareGuillotine } from '../patterns/guillotine/prepare-guillotine.ts';
import type { Job } from '../stock/job.ts';
import { columnOf } from './column.ts';
import type { Instance } from './instance.ts';
import { type Plan, planOf } from './plan.ts';

/** Whether the job asks for the most valuable set from one board: then one pattern is the whole answer. */
export function isOneBoard(job: Job, instance: Instance): boolean {
  return job.shop.goal === 'most value' && instance.groups.length === 1 && instance.groups[0]!.copies === 1;
}

/** Work grows by this factor from try to try, so that a first answer is there at once. */
const growth = 8;

/**
 * The most valuable pattern of one board, by the general engine with ever more work until it is proven or `work` is
 * spent. Yields between tries.
 */
export function* fillOneBoard(
  instance: Instance,
  standing: { best: Plan; bound: number },
  options: { readonly seed: number; readonly work: number },
): Generator<void, void, void> {
  const group = instance.groups[0]!;
  const worth = instance.kinds.map((kind) => kind.penalty);
  const all = instance.kinds.reduce((sum, kind) => sum + kind.penalty * kind.demand, 0);
  const plate = prepareGuillotine(group.plate, group.kinds);
  for (let work = 1e7; ; work = Math.min(options.work, work * growth)) {
    const answer = plate.price(worth, undefined, { work, seed: options.seed });
    const plan = planOf(instance, [columnOf(0, answer.pattern.placements, group)]);
    if (plan.objective < standing.best.objective) standing.best = plan;
    standing.bound = Math.max(standing.bound, all - answer.bound);
    yield;
    if (answer.proven || work >= options.work) return;
  }
}
