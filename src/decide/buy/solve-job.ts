import type { Choice } from '../../flow/choice/choice.ts';
import { choose } from '../../flow/choice/choose.ts';
import { chooseInTone } from '../../flow/choice/choose-in-tone.ts';
import { finish } from '../../flow/choice/progress.ts';
import type { Job } from '../../flow/stock/job.ts';
import { inTone, tonesOf } from './tones.ts';

/** Lays a job out: the real solver, or a stand-in of the tests. Deterministic. */
export type SolveJob = (job: Job) => Choice;

/** Solvers for the two questions of buying. */
export interface Solvers {
  /** The cheapest layout: heeds what boards cost. */
  readonly cheapest: SolveJob;
  /** Whether a job comes out of its boards at all, whatever they cost. */
  readonly comesOut: SolveJob;
}

/** The real solver, run to its end, what shows in one tone as in a layout. @param effort as of a layout */
export function solver(seed: number, effort: number): SolveJob {
  return (job) => finish(chooseInTone(job, { seed, effort }));
}

/** Effort spent on whether a job comes out: enough for branching to mend what a first dive leaves out. */
const effortWhetherItComesOut = 0.1;

/**
 * The real solver, asked only whether the job comes out of its boards, all of them free, in any of their tones. A layout
 * without shortage then costs 0 and is proven best, so the solver stops there by itself; and a bound above 0 proves that
 * something must be short, so it is stopped there.
 */
export function completer(seed: number): SolveJob {
  return (job) => {
    const free = { ...job, boards: job.boards.map((board) => ({ ...board, cost: 0 })) };
    const [first, ...others] = tonesOf(free);
    if (first === undefined) return completed(free, seed);
    let best = completed(inTone(free, first), seed);
    for (const tone of others) {
      if (best.short.length === 0) break;
      const next = completed(inTone(free, tone), seed);
      if (next.short.length < best.short.length) best = next;
    }
    return best;
  };
}

function completed(free: Job, seed: number): Choice {
  let short = false;
  const steps = choose(free, { seed, effort: effortWhetherItComesOut, stop: () => short });
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    short = step.value.bound !== null && step.value.bound > 1e-6;
  }
}
