import type { Choice } from '../../flow/choice/choice.ts';
import { chooseInTone } from '../../flow/choice/choose-in-tone.ts';
import { finish } from '../../flow/choice/progress.ts';
import type { Job } from '../../flow/stock/job.ts';
import type { ComesOut } from './comes-out/completer.ts';
import type { LeastMoney } from './yard/least-money.ts';

/** Lays a job out: the real solver, or a stand-in of the tests. Deterministic. */
export type SolveJob = (job: Job) => Choice;

/** Solvers for the questions of buying. */
export interface Solvers {
  /** The cheapest layout: heeds what boards cost. */
  readonly cheapest: SolveJob;
  /** Whether a job comes out of its boards at all, whatever they cost. */
  readonly comesOut: ComesOut;
  /** What a layout costs at least. */
  readonly least: LeastMoney;
}

/** The real solver, run to its end, what shows in one tone as in a layout. @param effort as of a layout */
export function solver(seed: number, effort: number): SolveJob {
  return (job) => finish(chooseInTone(job, { seed, effort }));
}
