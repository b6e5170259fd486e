import type { Job, Lumber, Visit } from '../../index.ts';

/** Visits to be drawn: one lumber, one grade, some numbers. Plain data, so that it can be posted to a thread. */
export interface VisitTask {
  readonly job: Job;
  readonly lumber: Lumber;
  readonly seed: number;
  readonly from: number;
  readonly to: number;
}

/** What a thread posts back: one visit, and where it belongs. */
export interface VisitDone {
  readonly task: number;
  readonly visit: number;
  readonly drawn: Visit;
}

/** What a thread is started with. */
export interface VisitWork {
  readonly tasks: readonly VisitTask[];
  /** This thread takes every `of`-th visit, from the `share`-th on. */
  readonly share: number;
  readonly of: number;
}
