import { describe, expect, it } from 'vitest';
import { ticks } from '../../src/base/units/tick.ts';
import { chooseMatching } from '../../src/flow/choice/choose-matching.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { blankOf } from '../../src/flow/parts/blank.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { billJob } from '../laws/bills/bill.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';

const inch = 8128;

/** The job with a part's copies made of exactly so many strips: the strips are parts of their own. */
function withStrips(job: Job, part: Part, strips: number): Job {
  const { width } = blankOf(part, job.shop, strips);
  const made = { ...part, glueUp: 1, quantity: part.quantity * strips, width: ticks(width) };
  return { ...job, parts: job.parts.map((each) => (each === part ? made : each)) };
}

function costOf(job: Job, effort: number): { short: number; value: number; bound: number } {
  const { short, proof } = finish(chooseMatching(job, { seed: 1, effort }));
  return { short: short.length, value: proof.value, bound: proof.bound };
}

describe('ways to make a part', () => {
  it.each([2, 3, 8])('furniture bill %i: proven, and no fixed number of strips is cheaper', (seed) => {
    const job = billJob(seed, { of: 'furniture', count: 1, credit: 0 });
    const free = finish(chooseMatching(job, { seed: 1, effort: 1 }));
    expect(free.short).toEqual([]);
    expect(free.proof.proven).toBe(true);
    const panel = job.parts.find(({ glueUp }) => glueUp > 1)!;
    for (let strips = 1; strips <= Math.min(4, panel.glueUp); strips += 1) {
      const fixed = costOf(withStrips(job, panel, strips), 0.1);
      if (fixed.short === 0) expect(free.proof.value).toBeLessThanOrEqual(fixed.value + 1e-6);
    }
  });

  it('copies of one part are made in different ways where that is cheaper', () => {
    // One wide board holds one panel whole; the other panel is made of two strips of the narrow board.
    const panel = {
      ...plainPart({ name: 'panel', length: 20 * inch, width: 10 * inch }),
      quantity: 2,
      glueUp: 2,
    };
    const boards = [
      { ...plainBoard({ name: 'wide', length: 22 * inch, width: 10 * inch }), cost: 10 },
      { ...plainBoard({ name: 'narrow', length: 45 * inch, width: 5.25 * inch }), cost: 10 },
    ];
    const shop = billJob(1, { of: 'casing', count: 1, credit: 0 }).shop;
    const job: Job = { name: 'two ways', shop, parts: [panel], boards };
    const { short, proof, patterns } = finish(chooseMatching(job, { seed: 1, effort: 0.1 }));
    expect(short).toEqual([]);
    expect(proof).toMatchObject({ value: 20, proven: true });
    const strips = patterns.flatMap(({ pieces }) => pieces.map(({ strip }) => strip?.of ?? 1));
    expect(strips.sort()).toEqual([1, 2, 2]);
  });
});
