import type { Choice } from '../../flow/choice/choice.ts';
import { choose } from '../../flow/choice/choose.ts';
import { finish } from '../../flow/choice/progress.ts';
import type { Job } from '../../flow/stock/job.ts';

/** Lays a job out: the real solver, or a stand-in of the tests. Deterministic. */
export type SolveJob = (job: Job) => Choice;

/**
 * The real solver, run to its end. Where every board is free it stops as soon as nothing is short, since no layout can
 * then cost less.
 * @param effort as of a layout; 0 for the many layouts of an estimate
 */
export function solver(seed: number, effort: number): SolveJob {
  return (job) => finish(choose(job, { seed, effort }));
}
