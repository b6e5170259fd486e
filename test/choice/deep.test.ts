import { describe, expect, it } from 'vitest';
import { buildInstance } from '../../src/flow/choice/build-instance.ts';
import { areaWorth } from '../../src/flow/choice/greedy.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { mantelJob, yardJob } from '../laws/random-job.ts';

function inStages(job: Job, stages: number | 'any'): Job {
  return { ...job, shop: { ...job.shop, stages } };
}

/** The value and bound of a job's checked layout. */
function proofOf(job: Job): Pick<Layout['proof'], 'value' | 'bound'> {
  const { layout, faults } = finish(layOutJob(job, { seed: 1, effort: 0.2 }));
  expect(faults).toEqual([]);
  expect(layout.short).toEqual([]);
  return layout.proof;
}

describe('more stages than four', () => {
  const jobs: readonly (readonly [string, Job])[] = [
    ...[1, 2, 3].map(
      (seed) => [`mantel ${seed}`, mantelJob(seed, { kinds: 8, pieces: 12, boards: 10 })] as const,
    ),
    ['a yard’s boards', yardJob(2, { kinds: 10, pieces: 20, sizes: 2 })],
  ];

  it.each(jobs)('never make a layout dearer, and bound no more than it costs: %s', (_, job) => {
    const four = proofOf(inStages(job, 4));
    for (const stages of [5, 'any'] as const) {
      const more = proofOf(inStages(job, stages));
      expect(more.value).toBeLessThanOrEqual(four.value + 1e-9);
      // What may be cut in four stages may be cut here: no bound is above it.
      expect(more.bound).toBeLessThanOrEqual(four.value + 1e-9);
    }
  });

  it('a board’s bound is no less than its best pattern in four', () => {
    const job = mantelJob(4, { kinds: 8, pieces: 12, boards: 10 });
    const [four, any] = [4, 'any' as const].map((stages) => buildInstance(inStages(job, stages)));
    const worth = areaWorth(four!);
    let patterns = 0;
    four!.groups.forEach(({ pricer }, g) => {
      const deep = any!.groups[g]!.pricer;
      const caps = Int32Array.from(four!.kinds, ({ demand }) => demand);
      const best = pricer.pattern(worth, caps, 0, true);
      const { bound, pattern } = deep.bound(worth, 0.5 * best.value, { mayBeLoose: true });
      expect(bound).toBeGreaterThanOrEqual(best.value - 1e-9);
      expect(pattern?.value ?? 0).toBeGreaterThan(0.5 * best.value);
      // Nothing is worth more than twice as much: what is left is the general engine's bound.
      expect(deep.bound(worth, 2 * best.value).bound).toBeGreaterThanOrEqual(best.value - 1e-9);
      patterns += 1;
    });
    expect(patterns).toBe(10);
  });
});
