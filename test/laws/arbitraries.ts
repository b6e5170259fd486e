import fc from 'fast-check';
import type { Job } from '../../src/flow/stock/job.ts';
import { type CuttableJob, type Oddness, cuttableJob } from './cuttable-job.ts';
import { hostileJob } from './hostile-job.ts';
import { type PerfectJob, perfectJob } from './perfect-job.ts';
import { mantelJob } from './random-job.ts';

/** A seed; shrinks towards 0, so that a failure names one plain number to run again. */
export const seed = fc.nat({ max: 2 ** 31 - 1 });

/** Makes a failure print what the job was made from instead of the whole job. */
function named<T extends object>(made: T, from: object): T {
  return Object.assign(made, { [fc.toStringMethod]: () => `made from ${JSON.stringify(from)}` });
}

/** Jobs with a choice that can be cut (see `cuttableJob`); smaller ones are tried when one fails. */
export function cuttableJobs(most: Oddness): fc.Arbitrary<CuttableJob> {
  return fc
    .record({
      seed,
      boards: fc.integer({ min: 1, max: most.boards }),
      pieces: fc.integer({ min: 1, max: most.pieces }),
    })
    .map(({ seed: own, ...oddness }) => named(cuttableJob(own, oddness), { seed: own, ...oddness }));
}

/** Jobs whose least cost is known by construction (see `perfectJob`). */
export function perfectJobs(most: {
  readonly sources: number;
  readonly pieces: number;
  readonly decoys: number;
}): fc.Arbitrary<PerfectJob> {
  return fc
    .record({
      seed,
      sources: fc.integer({ min: 1, max: most.sources }),
      pieces: fc.integer({ min: most.sources, max: most.pieces }),
      decoys: fc.integer({ min: 0, max: most.decoys }),
    })
    .map((given) => named(perfectJob(given), given));
}

/** Realistic mantel jobs (see `mantelJob`). */
export function mantelJobs(size: {
  readonly kinds: number;
  readonly boards: number;
  readonly pieces: number;
}): fc.Arbitrary<Job> {
  return seed.map((own) => mantelJob(own, size));
}

/** Jobs that no sane person would write (see `hostileJob`); smaller ones are tried when one fails. */
export function hostileJobs(most: {
  readonly boards: number;
  readonly parts: number;
  readonly runs: boolean;
}): fc.Arbitrary<Job> {
  return fc
    .record({
      seed,
      boards: fc.integer({ min: 0, max: most.boards }),
      parts: fc.integer({ min: 1, max: most.parts }),
      runs: fc.constant(most.runs),
    })
    .map(({ seed: own, ...size }) => named(hostileJob(own, size), { seed: own, ...size }));
}
