import type { Choice } from '../../flow/choice/choice.ts';
import { choose } from '../../flow/choice/choose.ts';
import { chooseGlued } from '../../flow/choice/glue-up/choose-glued.ts';
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
 * The real solver, asked only whether the job comes out of its boards, all of them free, in any of their tones, its parts
 * whole or else glued up where they may be.
 */
export function completer(seed: number): SolveJob {
  return inAnyTone((free) => {
    const choice = wholeParts(free, seed);
    const mayGlue = free.parts.some(({ glueUp, run }) => glueUp > 1 && run === null);
    return choice.short.length > 0 && mayGlue ? gluedParts(free, seed) : choice;
  });
}

/** As `completer`, but no part is glued up: quicker, and what does not come out so might still come out in strips. */
export function wholeCompleter(seed: number): SolveJob {
  return inAnyTone((free) => wholeParts(free, seed));
}

/** Asks for a job of free boards in each tone until it comes out; else the answer with the fewest parts short. */
function inAnyTone(solve: SolveJob): SolveJob {
  return (job) => {
    const free = { ...job, boards: job.boards.map((board) => ({ ...board, cost: 0 })) };
    const [first, ...others] = tonesOf(free);
    if (first === undefined) return solve(free);
    let best = solve(inTone(free, first));
    for (const tone of others) {
      if (best.short.length === 0) break;
      const next = solve(inTone(free, tone));
      if (next.short.length < best.short.length) best = next;
    }
    return best;
  };
}

/**
 * A layout without shortage costs 0 and is proven best, so the solver stops there by itself; and a bound above 0 proves
 * that something must be short, so it is stopped there.
 */
function wholeParts(free: Job, seed: number): Choice {
  let short = false;
  const steps = choose(free, { seed, effort: effortWhetherItComesOut, stop: () => short });
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    short = step.value.bound !== null && step.value.bound > 1e-6;
  }
}

/** Stopped as soon as every piece is laid out, which is when there is a value. */
function gluedParts(free: Job, seed: number): Choice {
  let complete = false;
  const steps = chooseGlued(free, { seed, effort: effortWhetherItComesOut, stop: () => complete });
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    complete ||= step.value.value !== null;
  }
}
