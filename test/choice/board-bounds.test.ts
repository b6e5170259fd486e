import { describe, expect, it } from 'vitest';
import { buildInstance } from '../../src/flow/choice/build-instance.ts';
import { areaWorth } from '../../src/flow/choice/greedy.ts';
import { mantelJob } from '../laws/random-job.ts';

describe('bounds of a mantel’s flawed boards for a target that none reaches', () => {
  const instances = [1, 2, 3].map((seed) =>
    buildInstance(mantelJob(seed, { kinds: 10, pieces: 20, boards: 14 })),
  );

  it('lie between the best pattern and the target, close ones often lower', () => {
    const seen = { boards: 0, closer: 0 };
    for (const instance of instances) {
      const worth = areaWorth(instance);
      for (const { pricer } of instance.groups) {
        const { bound: best } = pricer.bound(worth, -1);
        const target = 1.03 * best;
        const loose = pricer.bound(worth, target).bound;
        const close = pricer.bound(worth, target, { isClose: true }).bound;
        for (const bound of [loose, close]) {
          expect(bound).toBeGreaterThanOrEqual(best * (1 - 1e-12));
          expect(bound).toBeLessThanOrEqual(target * (1 + 1e-12));
        }
        seen.boards += 1;
        if (close < loose) seen.closer += 1;
      }
    }
    expect(seen.boards).toBe(42);
    expect(seen.closer).toBeGreaterThan(5);
  });

  it('are the worth of the best pattern, whatever the target below it', () => {
    for (const instance of instances) {
      const worth = areaWorth(instance);
      for (const { pricer } of instance.groups) {
        const { bound: best } = pricer.bound(worth, -1);
        for (const share of [0.5, 0.9, 0.99, 0.9999]) {
          const { bound, pattern } = pricer.bound(worth, share * best);
          expect(bound).toBeCloseTo(best, 12);
          expect(pattern!.value).toBeCloseTo(best, 12);
        }
      }
    }
  });
});
