import { describe, expect, it } from 'vitest';
import { random } from '../../src/base/random/random.ts';
import { buildInstance } from '../../src/flow/choice/build-instance.ts';
import { columnLoss } from '../../src/flow/choice/column.ts';
import { choose } from '../../src/flow/choice/choose.ts';
import { type Pool, emptyPool, wholeRest } from '../../src/flow/choice/generate.ts';
import { greedy } from '../../src/flow/choice/greedy.ts';
import type { Instance } from '../../src/flow/choice/instance.ts';
import { openMaster } from '../../src/flow/choice/master.ts';
import { planOf } from '../../src/flow/choice/plan.ts';
import { boundAt } from '../../src/flow/choice/prices/bound-at.ts';
import { closeIn } from '../../src/flow/choice/prices/close-in.ts';
import { movePrices } from '../../src/flow/choice/prices/move-prices.ts';
import { openingPrices } from '../../src/flow/choice/prices/opening-prices.ts';
import { pricesAmongMet } from '../../src/flow/choice/prices/prices-among-met.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import type { Standing } from '../../src/flow/choice/standing.ts';
import { emptyStore } from '../../src/flow/choice/store.ts';
import { mantelJob } from '../laws/random-job.ts';

const exactly = { slack: 0, mostStarts: Infinity };

/** What the simplex says of the same columns. */
function masterOver({ kinds, groups }: Instance, { columns }: Pool): number {
  const master = openMaster({
    demand: kinds.map(({ demand }) => demand),
    penalty: kinds.map(({ penalty }) => penalty),
    copies: groups.map(({ copies }) => copies),
  });
  for (const column of columns) master.add(column);
  return master.solve().objective;
}

/** An instance of many boards, patterns met while prices were moved, and these prices. */
function met(seed: number): { instance: Instance; pool: Pool; prices: Float64Array } {
  const instance = buildInstance(mantelJob(seed, { kinds: 16, boards: 45, pieces: 60 }));
  const pool = emptyPool();
  const rest = wholeRest(instance);
  const prices = openingPrices(instance, rest);
  const moves = { passes: 6, step: 0.2, decay: 0.8, fine: true, until: Infinity };
  finish(movePrices(instance, rest, pool, prices, random(seed), moves));
  // Patterns enough that everything can be laid out among them.
  finish(greedy(instance, wholeRest(instance), pool, prices, { fine: true, fromPool: false }));
  return { instance, pool, prices };
}

describe('prices among the patterns met', () => {
  it.each([1, 2, 3, 4, 5, 6])(
    'come near what a master over them is worth, never above: mantel %i',
    (seed) => {
      const { instance, pool, prices } = met(seed);
      const least = masterOver(instance, pool);
      const { value } = pricesAmongMet(instance, wholeRest(instance), pool.columns, prices, random(seed));
      expect(value).toBeLessThanOrEqual(least + 1e-6);
      expect(value).toBeGreaterThan(0.99 * least);
    },
  );

  it('say of each board what its best pattern brings beyond its cost', () => {
    const { instance, pool, prices } = met(7);
    const found = pricesAmongMet(instance, wholeRest(instance), pool.columns, prices, random(7));
    const losses = pool.columns.map((column) => columnLoss(column, found));
    expect(Math.min(...losses)).toBeGreaterThan(-1e-9);
    expect(Math.min(...losses)).toBeLessThan(1e-9);
    found.kind.forEach((price, k) => expect(price).toBeLessThanOrEqual(instance.kinds[k]!.penalty));
  });
});

/** Closes in from opening prices; what they bound, and how it stands at the end. */
function closedIn(instance: Instance): { readonly before: number; readonly standing: Standing } {
  const store = emptyStore();
  const rest = wholeRest(instance);
  const prices = openingPrices(instance, rest);
  const { bound, groupPrice } = finish(boundAt(instance, rest, store.pool, prices, exactly));
  finish(greedy(instance, wholeRest(instance), store.pool, prices, { fine: true, fromPool: false }));
  store.pool.prices = { kind: prices, group: groupPrice };
  const standing: Standing = { best: planOf(instance, []), bound, near: [] };
  const learnt = { cuts: [], refuted: [] };
  const solving = {
    instance,
    store,
    standing,
    stream: random(1),
    learnt,
    mix: { shares: null },
    budget: Infinity,
  };
  finish(closeIn(solving, exactly, Infinity));
  return { before: bound, standing };
}

describe('closing in without a master', () => {
  it.each([1, 2, 3, 4, 5, 6])('bounds never above a proven least cost: mantel %i', (seed) => {
    const job = mantelJob(seed, { kinds: 6, boards: 9, pieces: 9 });
    const { proof } = finish(choose(job, { seed: 1, effort: 1 }));
    expect(proof.proven).toBe(true);
    const { before, standing } = closedIn(buildInstance(job));
    expect(standing.bound).toBeGreaterThanOrEqual(before);
    expect(standing.bound).toBeLessThanOrEqual(proof.value + 1e-6);
  });

  it('raises the bound of many boards', () => {
    const { before, standing } = closedIn(buildInstance(mantelJob(1, { kinds: 16, boards: 45, pieces: 60 })));
    expect(standing.bound).toBeGreaterThan(1.02 * before);
  });
});
