import { random } from '../../base/random/random.ts';
import type { Job } from '../stock/job.ts';
import { areaBound, lagrangianBound } from './bound.ts';
import { buildInstance } from './build-instance.ts';
import type { Choice } from './choice.ts';
import { dive, greedy } from './dive.ts';
import { emptyPool, generateColumns, wholeRest } from './generate.ts';
import { improve } from './improve.ts';
import { type Plan, planOf } from './plan.ts';
import type { Progress, Solve, SolveOptions } from './progress.ts';
import { toChoice } from './to-choice.ts';

/** Share of the objective below which a gap is rounding. */
const gapTolerance = 1e-7;

function isMet(plan: Plan, bound: number): boolean {
  return plan.objective - bound <= gapTolerance * (1 + Math.abs(plan.objective));
}

/**
 * Chooses boards and patterns for a job: a layout at once, then column generation with its bound, a dive, and a
 * neighbourhood search until the bound is met or the effort is spent (DESIGN, section 9).
 * Deterministic in job, seed and effort; `stop` ends it early with the best so far.
 */
export function* choose(job: Job, options: SolveOptions): Solve {
  const instance = buildInstance(job, {
    patternX: 400,
    patternY: 64,
    boundX: 400,
    boundY: 64,
    mostStarts: 16,
  });
  const pool = emptyPool();
  const stopped = (): boolean => options.stop?.() === true;
  let bound = job.shop.goal === 'most value' ? 0 : areaBound(instance);
  let best = planOf(instance, greedy(instance, wholeRest(instance), pool));
  const say = (doing: string): Progress => ({ doing, value: best.objective, bound });
  const take = (plan: Plan): void => {
    if (plan.objective < best.objective) best = plan;
  };
  const done = (): boolean => stopped() || isMet(best, bound);

  yield say('first layout');
  if (!done()) {
    const steps = generateColumns(instance, wholeRest(instance), pool, 60);
    let step = steps.next();
    while (step.done !== true && !stopped()) {
      yield say('finding patterns');
      step = steps.next();
    }
    if (step.done === true) {
      const { answer } = step.value;
      const target = (g: number): number => instance.groups[g]!.cost + answer.groupPrice[g]!;
      bound = Math.max(bound, lagrangianBound(instance, answer.kindPrice, target));
    }
  }
  if (!done()) {
    const steps = dive(instance, wholeRest(instance), pool, { first: 1, later: 6 });
    let step = steps.next();
    while (step.done !== true && !stopped()) {
      yield say('choosing boards');
      step = steps.next();
    }
    if (step.done === true) take(planOf(instance, step.value));
  }
  const steps = improve(
    instance,
    best,
    pool,
    random(options.seed),
    Math.round(30 * options.effort),
    (plan) => {
      take(plan);
      return isMet(best, bound);
    },
  );
  for (let step = done() ? null : steps.next(); step !== null && step.done !== true; step = steps.next()) {
    yield say('improving');
    if (done()) break;
  }
  return toChoice(job, instance, best, bound);
}

export type { Choice };
