import type { Instance } from '../instance.ts';
import type { Plan } from '../plan.ts';
import { type SticksOptions, solveSticks } from './solve-sticks.ts';

/** The best plan and bound so far, as the solve of a job holds them. */
interface Standing {
  best: Plan;
  bound: number;
}

/** Sticks may take more work than other jobs of as many pieces: the last stick is often found, or ruled out, late. */
const workShare = 3;

/** Solves a job of sticks (see isSticks) as a stage of `choose`: betters the standing, a yield after each step. */
export function* cutSticks(
  instance: Instance,
  standing: Standing,
  options: SticksOptions,
): Generator<void, void, void> {
  const { spent } = instance.meter;
  const steps = solveSticks(instance, { ...options, until: spent + workShare * (options.until - spent) });
  for (let step = steps.next(); ; step = steps.next()) {
    const { plan, bound } = step.value;
    if (plan.objective < standing.best.objective) standing.best = plan;
    standing.bound = Math.max(standing.bound, bound);
    if (step.done === true) return;
    yield;
  }
}
