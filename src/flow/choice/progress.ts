import type { Job } from '../stock/job.ts';
import type { Choice } from './choice.ts';
import type { OpenThread } from './other-thread.ts';

/** Said between two pieces of work. @typeParam T what the steps end with */
export interface Progress<T = unknown> {
  /** What it is doing, in words for the maker. */
  readonly doing: string;
  /** The best layout's goal value so far; null before the first. */
  readonly value: number | null;
  /** The best valid bound so far; null before the first. */
  readonly bound: number | null;
  /**
   * The best answer so far, checked and complete as the steps would end with it; null before the first. Costs something:
   * asked for only by whoever may have to do without the end of the steps.
   */
  readonly soFar?: () => T | null;
}

/** A long answer in steps: yields how it stands, returns the answer. The shell drives it, and may have to leave it. */
export type Steps<T> = Generator<Progress<T>, T, void>;

/**
 * Options of a solve. Effort counts work, not seconds, so that the answer is the same on any machine;
 * `stop` lets the shell end it early (Ctrl-C, or a time limit the user asked for).
 */
export interface SolveOptions {
  readonly seed: number;
  /** 1 is the default; 0 gives the first layout and the root bound; larger works longer. */
  readonly effort: number;
  readonly stop?: () => boolean;
  /** Asked only whether all parts can be laid out: ends as soon as a layout has them all, or is proven not to exist. */
  readonly untilKnown?: boolean;
  /** Gives a second thread to price boards with: the same answer, sooner. Without it all is done on this one. */
  readonly thread?: OpenThread | undefined;
  /**
   * What a choice comes to by the goal once its cuts and offcuts are known. Without it the solver's measure decides between
   * layouts, which credits some wood that is too small to keep.
   */
  readonly costOf?: (job: Job, choice: Choice) => number;
}

/** A solve in steps: returns the best choice found. The shell drives it and can stop it. */
export type Solve = Steps<Choice>;

/** Drives a solve to its end. */
export function finish<T>(steps: Generator<unknown, T, void>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** Drives steps that are part of a longer answer, and says something else at each. */
export function* retold<S, R, T>(
  steps: Generator<S, R, void>,
  say: (said: S) => Progress<T>,
): Generator<Progress<T>, R, void> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return step.value;
    yield say(step.value);
  }
}

/**
 * Drives steps that are part of a longer answer.
 * @param whole the whole answer so far, by the part's own; null where there is none yet
 */
export function within<S, R, T>(
  steps: Generator<Progress<S>, R, void>,
  whole: (part: S | null) => T | null,
): Generator<Progress<T>, R, void> {
  return retold(steps, (said) => ({ ...said, soFar: () => whole(said.soFar?.() ?? null) }));
}
