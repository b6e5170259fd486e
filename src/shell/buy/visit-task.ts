import { type ComesOut, type Job, type Lumber, type Visit, drawMixedVisit, drawVisit } from '../../index.ts';

/** Visits to be drawn: one lumber, one grade, some numbers. Plain data, so that it can be posted to a thread. */
export interface VisitTask {
  readonly job: Job;
  readonly lumber: Lumber;
  /** Where two grades are bought: the better one, and what is looked for in it. */
  readonly mix: { readonly first: Lumber; readonly hardest: string } | null;
  readonly seed: number;
  readonly from: number;
  readonly to: number;
}

/** Draws one visit of a task. */
export function visitOf({ job, lumber, mix, seed }: VisitTask, visit: number, comesOut: ComesOut): Visit {
  return mix === null
    ? drawVisit(job, lumber, seed, visit, comesOut)
    : drawMixedVisit(job, mix.first, mix.hardest, lumber, seed, visit, comesOut);
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
