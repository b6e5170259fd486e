import type { Job } from '../stock/job.ts';
import type { Choice } from './choice.ts';
import type { OpenThread } from './other-thread.ts';

/** Said by the solver between two pieces of work. */
export interface Progress {
  /** What it is doing, in words for the maker. */
  readonly doing: string;
  /** The best layout's goal value so far; null before the first. */
  readonly value: number | null;
  /** The best valid bound so far; null before the first. */
  readonly bound: number | null;
}

/**
 * Options of a solve. Effort counts work, not seconds, so that the answer is the same on any machine;
 * `stop` lets the shell end it early (Ctrl-C, or a time limit the user asked for).
 */
export interface SolveOptions {
  readonly seed: number;
  /** 1 is the default; 0 gives the first layout and the root bound; larger works longer. */
  readonly effort: number;
  readonly stop?: () => boolean;
  /** Gives a second thread to price boards with: the same answer, sooner. Without it all is done on this one. */
  readonly thread?: OpenThread | undefined;
  /**
   * What a choice comes to by the goal once its cuts and offcuts are known. Without it the solver's measure decides between
   * layouts, which credits some wood that is too small to keep.
   */
  readonly costOf?: (job: Job, choice: Choice) => number;
}

/** A solve in steps: yields progress, returns the best choice found. The shell drives it and can stop it. */
export type Solve = Generator<Progress, Choice, void>;

/** Drives a solve to its end. */
export function finish<T>(steps: Generator<unknown, T, void>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** Drives steps that are part of a solve, and says something else at each. */
export function* retold<S, T>(
  steps: Generator<S, T, void>,
  say: (said: S) => Progress,
): Generator<Progress, T, void> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return step.value;
    yield say(step.value);
  }
}
