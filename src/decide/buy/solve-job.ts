import { chooseMatching } from '../../flow/choice/choose-matching.ts';
import type { Solve, SolveOptions } from '../../flow/choice/progress.ts';
import type { Job } from '../../flow/stock/job.ts';
import type { ComesOut } from './comes-out/completer.ts';
import type { LeastMoney } from './yard/least-money.ts';

/** Lays a job out: the real solver, or a stand-in of the tests. Deterministic. */
export type SolveJob = (job: Job) => Solve;

/** Solvers for the questions of buying. */
export interface Solvers {
  /** The cheapest layout: heeds what boards cost. */
  readonly cheapest: SolveJob;
  /** Whether a job comes out of its boards at all, whatever they cost. */
  readonly comesOut: ComesOut;
  /** What a layout costs at least. */
  readonly least: LeastMoney;
  /** Turns true once when the answer should end with what there is. */
  readonly stop?: () => boolean;
}

/** The real solver, what shows in one species and tone as in a layout. */
export function solver(options: SolveOptions): SolveJob {
  return (job) => chooseMatching(job, options);
}
