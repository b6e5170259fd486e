import { expect, test } from 'vitest';
import { choose } from '../../src/flow/choice/choose.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { stickFamilies, stickJob, stickProblems } from './sticks-jobs.ts';

/**
 * Problems of each family that take well under two seconds; `npm run bench published` runs them all. TEST0055A is one at
 * which the simplex went in circles.
 */
const quick = new Set([
  'u120_00',
  'u120_19',
  'u250_13',
  't60_01',
  't60_07',
  'N1C1W1_A',
  'N2C2W2_H',
  'TEST0055A',
  'N3C1W1_F',
  'N1W1B1R0',
  'Schwerin1_BPP1',
  'Schwerin2_BPP1',
  'ml-class5bins-n25',
]);

const problems = stickFamilies.flatMap(stickProblems).filter(({ name }) => quick.has(name));

test.each(problems.map((problem) => [problem.name, problem] as const))(
  '%s: the published optimum, proven, and laid out without fault',
  (_, problem) => {
    const job = stickJob(problem);
    const choice = finish(choose(job, { seed: 1, effort: 1 }));
    expect(choice.proof).toMatchObject({
      value: problem.known.value,
      bound: problem.known.value,
      proven: true,
    });
    expect(choice.short).toEqual([]);
    expect(verify(job, layOut(job, choice))).toEqual([]);
  },
);
