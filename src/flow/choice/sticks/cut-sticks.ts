import type { Instance } from '../instance.ts';
import type { Plan } from '../plan.ts';
import { type SticksOptions, solveSticks } from './solve-sticks.ts';

/** The best plan and bound so far, as the solve of a job holds them. */
interface Standing {
  best: Plan;
  bound: number;
}

/** Solves a job of sticks (see isSticks) as a stage of `choose`: betters the standing, a yield after each step. */
export function* cutSticks(
  instance: Instance,
  standing: Standing,
  options: SticksOptions,
): Generator<void, void, void> {
  const steps = solveSticks(instance, options);
  for (let step = steps.next(); ; step = steps.next()) {
    const { plan, bound } = step.value;
    if (plan.objective < standing.best.objective) standing.best = plan;
    standing.bound = Math.max(standing.bound, bound);
    if (step.done === true) return;
    yield;
  }
}
