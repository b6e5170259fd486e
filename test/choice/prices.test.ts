import { describe, expect, it } from 'vitest';
import { random } from '../../src/base/random/random.ts';
import { inches, ticks } from '../../src/base/units/tick.ts';
import { buildInstance } from '../../src/flow/choice/build-instance.ts';
import { isByPrices } from '../../src/flow/choice/by-prices.ts';
import type { Choice } from '../../src/flow/choice/choice.ts';
import { chooseMatching } from '../../src/flow/choice/choose-matching.ts';
import { choose } from '../../src/flow/choice/choose.ts';
import { emptyPool, wholeRest } from '../../src/flow/choice/generate.ts';
import type { Instance } from '../../src/flow/choice/instance.ts';
import { solveNode } from '../../src/flow/choice/node.ts';
import { boundAt } from '../../src/flow/choice/prices/bound-at.ts';
import { movePrices } from '../../src/flow/choice/prices/move-prices.ts';
import { openingPrices } from '../../src/flow/choice/prices/opening-prices.ts';
import { emptyStore } from '../../src/flow/choice/store.ts';
import { scaleToFine } from '../../src/flow/choice/prices/scale-prices.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { measureHand } from '../bench/measure.ts';
import { perfectJob } from '../laws/perfect-job.ts';
import { mantelJob } from '../laws/random-job.ts';
import { seeded } from '../laws/seeded.ts';

function solved(job: Job, effort: number): Choice {
  return finish(choose(job, { seed: 1, effort }));
}

function boundOf(instance: Instance, prices: Float64Array, slack = 0, mostStarts = Infinity): number {
  return finish(boundAt(instance, wholeRest(instance), emptyPool(), prices, { slack, mostStarts })).bound;
}

/** The checked layout of a job, solved step by step: its value never rises, its bound never falls, all parts are there. */
function layoutOf(job: Job, effort: number): Layout {
  let [value, bound]: [number | null, number] = [null, 0];
  const steps = layOutJob(job, { seed: 1, effort });
  let step = steps.next();
  for (; step.done !== true; step = steps.next()) {
    if (value !== null) expect(step.value.value).toBeLessThanOrEqual(value + 1e-9);
    expect(step.value.bound).toBeGreaterThanOrEqual(bound - 1e-9);
    value = step.value.value;
    bound = step.value.bound ?? bound;
  }
  expect(step.value.faults).toEqual([]);
  expect(step.value.layout.short).toEqual([]);
  return step.value.layout;
}

/** The job with boards beside its own that are the same and three times as dear, so many that it is solved by prices. */
function amongDearBoards(job: Job): Job {
  const more = Array.from({ length: 70 - job.boards.length }, (_, i): Board => {
    const like = job.boards[i % job.boards.length]!;
    return { ...like, name: `dear ${i + 1}`, cost: 3 * like.cost };
  });
  return { ...job, boards: [...job.boards, ...more] };
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
        expect(boundOf(instance, prices, 0, 2)).toBeLessThanOrEqual(boundOf(instance, prices) + 1e-6);
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

describe('prices found in the rough', () => {
  it('stay finite and at most what leaving a piece out costs, whatever boards yield among all positions', () => {
    const job = mantelJob(1, { kinds: 6, boards: 9, pieces: 9 });
    const instance = buildInstance({ ...job, shop: { ...job.shop, goal: 'most value' } });
    const pattern = (how: string, fine: number) => ({ placements: [], value: how === 'fine' ? fine : 2 });
    for (const fine of [0, 0.5, 1, 3]) {
      const price: Instance['price'] = (asks) =>
        asks.map(({ how }) => ({ bound: Infinity, pattern: pattern(how, fine) }));
      const prices = Float64Array.from(instance.kinds, ({ penalty }) => 0.9 * penalty);
      scaleToFine({ ...instance, price }, wholeRest(instance), prices);
      instance.kinds.forEach(({ penalty }, k) => expect(prices[k]!).toBeLessThanOrEqual(penalty));
    }
  });
});

describe('a pass through many boards', () => {
  it('asks few at a time, so that it can be ended between them', () => {
    const instance = buildInstance(mantelJob(1, { kinds: 6, boards: 70, pieces: 20 }));
    const rest = wholeRest(instance);
    const lots: number[] = [];
    const price: Instance['price'] = (asks) => {
      lots.push(asks.length);
      return instance.price(asks);
    };
    const center = {
      prices: openingPrices(instance, rest),
      groupPrices: new Float64Array(instance.groups.length),
      bound: 0,
    };
    const steps = solveNode({ ...instance, price }, rest, emptyStore(), [], {
      ...{ rounds: 1, enough: Infinity, until: Infinity, capped: false, counts: false, center },
    });
    let yields = 0;
    while (steps.next().done !== true) yields += 1;
    expect(lots.reduce((sum, each) => sum + each, 0)).toBe(instance.groups.length);
    expect(Math.max(...lots)).toBeLessThanOrEqual(16);
    expect(yields).toBeGreaterThanOrEqual(lots.length);
  });
});

describe('a job among many boards', () => {
  it.each([1, 2, 3, 4])(
    'costs at least what it costs on its own boards, and little more: mantel %i',
    (seed) => {
      const job = mantelJob(seed, { kinds: 8, boards: 12, pieces: 14 });
      const { proof } = solved(job, 1);
      expect(proof.proven).toBe(true);
      const large = amongDearBoards(job);
      const { proof: found } = layoutOf(large, 1);
      expect(found.bound).toBeLessThanOrEqual(proof.value + 1e-6);
      expect(found.value).toBeGreaterThanOrEqual(proof.value - 1e-6);
      expect(found.value).toBeLessThanOrEqual(1.1 * proof.value);
    },
  );

  it('is bounded by areas at least where glue-ups leave no time for prices', () => {
    const job = mantelJob(3, { kinds: 8, boards: 62, pieces: 12 });
    const glued = { ...job, parts: job.parts.map((part) => ({ ...part, glueUp: 3 })) };
    const { proof, short } = finish(chooseMatching(glued, { seed: 1, effort: 0.01 }));
    expect(short).toEqual([]);
    expect(proof.bound).toBeGreaterThan(0.7 * proof.value);
  });

  it('is bounded as closely where offcuts earn nearly all of their price', () => {
    const job = mantelJob(1, { kinds: 20, boards: 70, pieces: 44 });
    const { proof } = solved({ ...job, shop: { ...job.shop, offcutCredit: 0.9 } }, 0.2);
    expect(proof.gap).toBeLessThan(0.06);
  });

  it('is proven as ever where the others are too thin, or too small, for any part', () => {
    const job = mantelJob(2, { kinds: 8, boards: 10, pieces: 14 });
    const others = Array.from({ length: 70 }, (_, i): Board => {
      const like = { ...job.boards[i % job.boards.length]!, name: `other ${i + 1}` };
      return i % 2 === 0 ? { ...like, dressedThickness: ticks(1) } : { ...like, length: inches(4) };
    });
    const large = { ...job, boards: [...others, ...job.boards] };
    const { proof, patterns, short } = solved(large, 0.5);
    expect(proof).toEqual({ ...solved(job, 0.5).proof, proven: true });
    expect(short).toEqual([]);
    expect(patterns.every(({ board }) => board >= others.length)).toBe(true);
  });
});

describe('a job of many boards and pieces', () => {
  it.each([1, 2])('is bettered step by step, and costs less than by hand: seed %i', (seed) => {
    const job = mantelJob(seed, { kinds: 16, boards: 64, pieces: 60 });
    expect(isByPrices(buildInstance(job))).toBe(true);
    const layout = layoutOf(job, 0.3);
    expect(layout.proof.bound).toBeLessThanOrEqual(layout.proof.value);
    expect(layout.proof.value).toBeLessThan(measureHand(job)!.cost);
  });

  it('is laid out among more boards than a master is made for', () => {
    const job = mantelJob(3, { kinds: 12, boards: 135, pieces: 48 });
    const { proof } = layoutOf(job, 0.1);
    expect(proof.bound).toBeLessThanOrEqual(proof.value);
    expect(proof.gap).toBeLessThan(0.12);
  });

  it.each([1, 2])('takes what is worth most where there are too many pieces: seed %i', (seed) => {
    const job = mantelJob(seed, { kinds: 16, boards: 42, pieces: 60 });
    const parts = job.parts.map((part) => ({ ...part, quantity: 4 * part.quantity }));
    const wanted: Job = { ...job, parts, shop: { ...job.shop, goal: 'most value' } };
    const steps = layOutJob(wanted, { seed: 1, effort: 0.2 });
    const { layout, faults } = finish(steps);
    expect(faults).toEqual([]);
    expect(layout.short.length).toBeGreaterThan(0);
    expect(layout.proof.value).toBeLessThanOrEqual(layout.proof.bound!);
    expect(layout.proof.gap).toBeLessThan(0.06);
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
