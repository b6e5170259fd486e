import { describe, expect, it } from 'vitest';
import { layOutJob } from '../../src/pipeline.ts';
import { plateJobFamilies, plateJobs } from './plate-jobs.ts';

/** Problems of each family that a job solves and proves within a second or two; `npm run bench published` runs them all. */
const quick = new Set([
  ...['gcut5', 'gcut12', 'UU4', 'UW6', 'cgcut3/unconstrained'],
  ...['OF2', 'wang20', 'CHL1', 'CW3', 'CU7', 'Hchl4s', 'okp4'],
  ...['CHL5-d4', 'CW04_M2', 'CW11_M2', 'cl_01_020_07', 'cl_02_100_04'],
]);

describe.each(plateJobFamilies)('%s, from a job to a checked layout', (family) => {
  const problems = plateJobs(family).filter(
    ({ name }, index) => quick.has(name) || (family === 'defects_derived' && index % 4 === 0),
  );
  it.each(problems)('$name: $optimum', ({ job, optimum }) => {
    const steps = layOutJob(job, { seed: 1, effort: 1 });
    let step = steps.next();
    while (step.done !== true) step = steps.next();
    const { layout, faults } = step.value;
    expect(faults).toEqual([]);
    expect(layout.proof).toMatchObject({ value: optimum, bound: optimum, proven: true });
  });
});
