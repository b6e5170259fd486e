import type { Highs } from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { outsideSolver } from '../base/lp/outside-solver.ts';
import { judge } from './oracle/judge.ts';
import { type TinyRules, printedJob, tinyJob } from './oracle/tiny-job.ts';

/** Loaded once. */
const loaded: { highs?: Highs } = {};

beforeAll(async () => {
  loaded.highs = await outsideSolver();
});

interface Sort {
  readonly rules: TinyRules;
  readonly jobs: number;
  /** Shares of the jobs that must be proven, and for which the best must be found: no laws, but what has been reached. */
  readonly proven: number;
  readonly best: number;
}

const plain = { goal: 'least cost', credit: false, stages: [3, 4, 4] } as const;

const sorts: readonly (readonly [string, Sort])[] = [
  [
    'most value with glue-ups',
    { rules: { ...plain, goal: 'most value', about: 'glue-ups' }, jobs: 40, proven: 0.5, best: 0.85 },
  ],
  ['least cost', { rules: plain, jobs: 300, proven: 0.8, best: 0.9 }],
  ['least cost in one tone', { rules: { ...plain, about: 'tones' }, jobs: 60, proven: 0.6, best: 0.9 }],
  ['least cost with glue-ups', { rules: { ...plain, about: 'glue-ups' }, jobs: 60, proven: 0.5, best: 0.85 }],
  ['most value', { rules: { ...plain, goal: 'most value' }, jobs: 200, proven: 0.95, best: 0.97 }],
  ['least cost with offcut credit', { rules: { ...plain, credit: true }, jobs: 80, proven: 0.4, best: 0.75 }],
  [
    'least cost with offcut credit at one, two, five stages and any',
    {
      rules: { goal: 'least cost', credit: true, stages: [1, 2, 5, 'any'] },
      ...{ jobs: 80, proven: 0.5, best: 0.85 },
    },
  ],
  [
    'least cost with glue-ups and offcut credit',
    { rules: { ...plain, credit: true, about: 'glue-ups' }, jobs: 120, proven: 0.35, best: 0.75 },
  ],
  [
    'least cost on many copies of one or two boards',
    { rules: { ...plain, about: 'copies' }, jobs: 150, proven: 0.8, best: 0.9 },
  ],
  [
    'least cost on many copies at one, two, five stages and any',
    { rules: { ...plain, stages: [1, 2, 5, 'any'], about: 'copies' }, jobs: 60, proven: 0.8, best: 0.9 },
  ],
  [
    'least cost on many copies, with offcut credit',
    { rules: { ...plain, credit: true, about: 'copies' }, jobs: 60, proven: 0.4, best: 0.7 },
  ],
  [
    'least cost with a run',
    { rules: { ...plain, stages: [4], about: 'run' }, jobs: 60, proven: 0.9, best: 0.95 },
  ],
  [
    'least cost at one, two, five stages and any',
    { rules: { ...plain, stages: [1, 2, 5, 'any'] }, jobs: 80, proven: 0.85, best: 0.95 },
  ],
  [
    'most value at one, two, five stages and any',
    { rules: { ...plain, goal: 'most value', stages: [1, 2, 5, 'any'] }, jobs: 60, proven: 0.9, best: 0.95 },
  ],
];

describe('beside the best of all ways to cut all boards of tiny jobs, by an independent integer solver', () => {
  test.each(sorts)('%s: the best lies between bound and value, and is the value where proven', (_, sort) => {
    const { rules, jobs } = sort;
    let proven = 0;
    let best = 0;
    for (let seed = 1; seed <= jobs; seed += 1) {
      const tiny = tinyJob(seed, rules);
      const answer = judge(loaded.highs!, tiny, { seed: 1, effort: 0.1 });
      expect(answer.wrong, `seed ${seed}\n${printedJob(tiny)}`).toEqual([]);
      if (answer.proven) proven += 1;
      if (answer.isBest) best += 1;
    }
    expect(proven).toBeGreaterThanOrEqual(sort.proven * jobs);
    expect(best).toBeGreaterThanOrEqual(sort.best * jobs);
  });

  // Branch and price went on for ever where a node could not be had; the last was given three of two boards.
  test.each([9, 42, 52, 120])('the job of seed %i, which once was solved wrongly or never', (seed) => {
    const tiny = tinyJob(seed, plain);
    expect(judge(loaded.highs!, tiny, { seed: 1, effort: 0.1 }).wrong, printedJob(tiny)).toEqual([]);
  });
});
