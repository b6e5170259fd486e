import { describe, expect, it } from 'vitest';
import { random } from '../../src/base/random/random.ts';
import { buildInstance } from '../../src/flow/choice/build-instance.ts';
import { isByPrices } from '../../src/flow/choice/by-prices.ts';
import type { Choice } from '../../src/flow/choice/choice.ts';
import { choose } from '../../src/flow/choice/choose.ts';
import { emptyPool, wholeRest } from '../../src/flow/choice/generate.ts';
import type { Instance } from '../../src/flow/choice/instance.ts';
import { boundAt } from '../../src/flow/choice/prices/bound-at.ts';
import { movePrices } from '../../src/flow/choice/prices/move-prices.ts';
import { openingPrices } from '../../src/flow/choice/prices/opening-prices.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { measureHand } from '../bench/measure.ts';
import { perfectJob } from '../laws/perfect-job.ts';
import { mantelJob } from '../laws/random-job.ts';
import { seeded } from '../laws/seeded.ts';

function solved(job: Job, effort: number): Choice {
  return finish(choose(job, { seed: 1, effort }));
}

function boundOf(instance: Instance, prices: Float64Array, slack = 0): number {
  const limits = { slack, until: Infinity };
  return finish(boundAt(instance, wholeRest(instance), emptyPool(), prices, limits))!.bound;
}

describe('the bound at given prices', () => {
  it.each([1, 2, 3, 4, 5, 6])(
    'is never above a proven least cost, whatever the prices: mantel %i',
    (seed) => {
      const job = mantelJob(seed, { kinds: 6, boards: 9, pieces: 9 });
      const { proof } = solved(job, 1);
      expect(proof.proven).toBe(true);
      const instance = buildInstance(job);
      const opening = openingPrices(instance, wholeRest(instance));
      const stream = seeded(seed);
      for (let draw = 0; draw < 12; draw += 1) {
        const about = 0.5 + 1.5 * stream.next();
        const prices = opening.map((price, k) =>
          Math.min(instance.kinds[k]!.penalty, price * about * (0.7 + 0.6 * stream.next())),
        );
        expect(boundOf(instance, prices)).toBeLessThanOrEqual(proof.value + 1e-6);
        expect(boundOf(instance, prices, 0.02)).toBeLessThanOrEqual(boundOf(instance, prices) + 1e-6);
      }
    },
  );

  it('rises as prices are moved', () => {
    const job = mantelJob(3, { kinds: 14, boards: 40, pieces: 40 });
    const instance = buildInstance(job);
    const rest = wholeRest(instance);
    const prices = openingPrices(instance, rest);
    const before = boundOf(instance, prices);
    const moves = { passes: 12, step: 0.2, decay: 0.8, fine: true, until: Infinity };
    finish(movePrices(instance, rest, emptyPool(), prices, random(1), moves));
    expect(boundOf(instance, prices)).toBeGreaterThan(1.05 * before);
  });
});

describe('a job of many boards and pieces', () => {
  it.each([1, 2])('is bettered step by step, and costs less than by hand: seed %i', (seed) => {
    const job = mantelJob(seed, { kinds: 16, boards: 64, pieces: 60 });
    expect(isByPrices(buildInstance(job))).toBe(true);
    let [value, bound]: [number | null, number] = [null, 0];
    const steps = layOutJob(job, { seed: 1, effort: 0.3 });
    let step = steps.next();
    for (; step.done !== true; step = steps.next()) {
      // The value never rises, the bound never falls.
      if (value !== null) expect(step.value.value).toBeLessThanOrEqual(value + 1e-9);
      expect(step.value.bound).toBeGreaterThanOrEqual(bound - 1e-9);
      value = step.value.value;
      bound = step.value.bound ?? bound;
    }
    expect(step.value.faults).toEqual([]);
    const { layout } = step.value;
    expect(layout.short).toEqual([]);
    expect(layout.proof.bound).toBeLessThanOrEqual(layout.proof.value);
    expect(layout.proof.value).toBeLessThan(measureHand(job)!.cost);
  });

  it.each([1, 2, 3, 4])('has a bound no higher than its making tells: seed %i', (seed) => {
    const { job, sourceCost } = perfectJob({ seed, sources: 3, pieces: 12, decoys: 4 });
    const instance = buildInstance(job);
    const rest = wholeRest(instance);
    const prices = openingPrices(instance, rest);
    const moves = { passes: 8, step: 0.2, decay: 0.8, fine: false, until: Infinity };
    finish(movePrices(instance, rest, emptyPool(), prices, random(seed), moves));
    const bound = boundOf(instance, prices);
    expect(bound).toBeLessThanOrEqual(sourceCost + 1e-6);
    expect(bound).toBeGreaterThan(0);
  });
});
