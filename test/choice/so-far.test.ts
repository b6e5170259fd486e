import { expect, it } from 'vitest';
import { layOutJob } from '../../src/pipeline.ts';
import { yardJob } from '../laws/random-job.ts';
import { tinyJob } from './oracle/tiny-job.ts';

const abouts = [{}, { about: 'run' }, { about: 'tones' }, { about: 'glue-ups' }] as const;

it('at every step the answer so far is sound, and of what it lacks it is not said that there is no room', () => {
  let [shown, lacking] = [0, 0];
  const tiny = Array.from(
    { length: 24 },
    (_, seed) =>
      tinyJob(seed, { goal: 'least cost', credit: seed % 2 === 0, stages: [2, 3, 4], ...abouts[seed % 4] })
        .job,
  );
  const jobs = [...tiny, yardJob(1, { kinds: 5, pieces: 20, sizes: 2 })];
  for (const [index, job] of jobs.entries()) {
    // Of several tones or ways to make a part, those looked at to the end have told what they lack.
    const isOneSolve = index % 4 < 2;
    for (const { soFar } of layOutJob(job, { seed: 1, effort: 0 })) {
      const answer = soFar?.() ?? null;
      if (answer === null) continue;
      shown += 1;
      expect(answer.faults).toEqual([]);
      const { bound, value } = answer.layout.proof;
      // With parts short there is none.
      if (answer.layout.short.length > 0) expect(bound).toBeNull();
      else expect(bound).toBeLessThanOrEqual(value + 1e-9);
      if (!isOneSolve) continue;
      lacking += answer.layout.short.length;
      for (const { why } of answer.layout.short) expect(why).not.toMatch(/no clear stretch left/);
    }
  }
  expect(Math.min(shown, lacking)).toBeGreaterThan(10);
});
