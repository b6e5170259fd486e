import { describe, expect, test } from 'vitest';
import type { Choice } from '../../src/flow/choice/choice.ts';
import { chooseMatching } from '../../src/flow/choice/choose-matching.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { type Change, changes, clearJob, oddJob, thinnerKerf } from './changed-job.ts';
import { mantelJob } from './random-job.ts';
import { seeded } from './seeded.ts';

const seeds = 20;

function solve(job: Job): Choice {
  return finish(chooseMatching(job, { seed: 1, effort: 1 }));
}

function jobOf(seed: number): Job {
  return oddJob(seed, mantelJob(seed, { kinds: 5, boards: 4, pieces: 8 }));
}

/** A job and its best layout, solved once for all changes. */
function solvedJobs(change: (job: Job) => Job): { seed: number; job: Job; before: Choice }[] {
  return Array.from({ length: seeds }, (_, index) => {
    const job = change(jobOf(index + 1));
    return { seed: index + 1, job, before: solve(job) };
  });
}

/** How a changed job breaks the law; null where it does not, or where one of the two is not proven or leaves parts out. */
function broken(job: Job, before: Choice, after: Choice, { effect }: Change): string | null {
  const isMost = job.shop.goal === 'most value';
  if (!before.proof.proven || !after.proof.proven) return null;
  if (!isMost && (before.short.length > 0 || after.short.length > 0)) {
    // A proof says that no more can be laid out, either.
    return before.short.length === 0 ? 'all parts were laid out before, and are not now' : null;
  }
  const [old, now] = [before.proof.value, after.proof.value];
  const slack = 1e-6 * (1 + Math.abs(old));
  const loss = isMost ? old - now : now - old;
  if (loss > slack) return `worse: ${old}, then ${now}`;
  return effect === 'as good' && loss < -slack ? `better: ${old}, then ${now}` : null;
}

/** Applies the change to each job; says how many could be compared. */
function compare(jobs: ReturnType<typeof solvedJobs>, change: Change): number {
  let compared = 0;
  for (const { seed, job, before } of jobs) {
    const after = solve(change.apply(job, seeded(seed)));
    expect(broken(job, before, after, change), `${change.name}, seed ${seed}`).toBeNull();
    if (before.proof.proven && after.proof.proven) compared += 1;
  }
  return compared;
}

describe('the proved best of a job', () => {
  const jobs = solvedJobs((job) => job);
  test.each(changes.map((change) => [change.name, change.effect, change] as const))(
    'with %s is %s',
    (_name, _effect, change) => {
      expect(compare(jobs, change)).toBeGreaterThanOrEqual(0.7 * seeds);
    },
  );
});

describe('the proved best of a job with clear boards', () => {
  test(`with ${thinnerKerf.name} is ${thinnerKerf.effect}`, () => {
    expect(compare(solvedJobs(clearJob), thinnerKerf)).toBeGreaterThanOrEqual(0.7 * seeds);
  });
});
