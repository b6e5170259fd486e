import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeFault } from '../../src/flow/check/describe-fault.ts';
import { verify } from '../../src/flow/check/verify.ts';
import type { Choice } from '../../src/flow/choice/choice.ts';
import { chooseMatching } from '../../src/flow/choice/choose-matching.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { hostileJobs } from './arbitraries.ts';

/** A small job that takes more steps than this is taken to go on for ever. */
const mostSteps = 20_000;

function solve(job: Job): Choice {
  const steps = chooseMatching(job, { seed: 1, effort: 0.02 });
  for (let count = 0; count < mostSteps; count += 1) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
  throw new Error('it goes on and on');
}

describe('whatever the job', () => {
  test('a solve ends, its layout passes the check, and its bound is on the right side of its value', () => {
    let laid = 0;
    fc.assert(
      fc.property(hostileJobs({ boards: 4, parts: 6, runs: false }), (job) => {
        const choice = solve(job);
        const layout = layOut(job, choice);
        expect(verify(job, layout).map((fault) => describeFault(fault))).toEqual([]);
        const sign = job.shop.goal === 'most value' ? -1 : 1;
        for (const { value, bound } of [choice.proof, layout.proof]) {
          if (bound === null) expect(layout.short.length).toBeGreaterThan(0);
          else expect(sign * (value - bound)).toBeGreaterThanOrEqual(-1e-9 * (1 + Math.abs(value)));
        }
        if (layout.boards.length > 0) laid += 1;
      }),
      { numRuns: 100, seed: 1 },
    );
    // So hostile that nothing could be laid out they must not be.
    expect(laid).toBeGreaterThanOrEqual(25);
  });
});
