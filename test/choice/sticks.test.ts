import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inches, ticks } from '../../src/base/units/tick.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { buildInstance } from '../../src/flow/choice/build-instance.ts';
import { choose } from '../../src/flow/choice/choose.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { exactCover } from '../../src/flow/choice/sticks/exact-cover.ts';
import { isSticks } from '../../src/flow/choice/sticks/to-sticks.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import { allLoads } from '../../src/flow/patterns/knapsack/all-loads.ts';
import { searchedLoad, tracedLoad } from '../../src/flow/patterns/knapsack/best-load.ts';
import {
  fillSuffixTable,
  openSuffixTable,
  suffixBound,
} from '../../src/flow/patterns/knapsack/suffix-table.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';

/** Lengths, worths and caps of a small bounded knapsack, longest first, and a stick. */
const knapsacks = fc
  .record({
    items: fc.array(
      fc.record({
        length: fc.integer({ min: 1, max: 12 }),
        worth: fc.integer({ min: 0, max: 30 }),
        cap: fc.integer({ min: 0, max: 3 }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    stick: fc.integer({ min: 1, max: 30 }),
  })
  .map(({ items, stick }) => {
    const sorted = [...items].sort((a, b) => b.length - a.length);
    return {
      lengths: Int32Array.from(sorted, (item) => item.length),
      worth: Float64Array.from(sorted, (item) => item.worth),
      caps: Int32Array.from(sorted, (item) => item.cap),
      stick,
    };
  });

/** Every way to fill the stick, one after another. */
function everyLoad({
  lengths,
  worth,
  caps,
  stick,
}: {
  lengths: Int32Array;
  worth: Float64Array;
  caps: Int32Array;
  stick: number;
}): number[] {
  const worths: number[] = [];
  const visit = (k: number, left: number, sum: number): void => {
    if (k === lengths.length) {
      worths.push(sum);
      return;
    }
    for (let n = 0; n <= caps[k]! && n * lengths[k]! <= left; n += 1)
      visit(k + 1, left - n * lengths[k]!, sum + n * worth[k]!);
  };
  visit(0, stick, 0);
  return worths;
}

describe('the knapsack of one stick', () => {
  test('table, traced and searched loads agree with trying all', () => {
    fc.assert(
      fc.property(knapsacks, (given) => {
        const meter = { spent: 0 };
        const table = openSuffixTable(given.lengths, given.stick);
        fillSuffixTable(table, given.worth, given.caps, meter);
        const best = Math.max(...everyLoad(given));
        expect(suffixBound(table, given.stick)).toBe(best);
        const load = tracedLoad(table, given.worth, given.caps, given.stick);
        expect(load.worth).toBe(best);
        expect(
          load.kinds.reduce((sum, k, i) => sum + given.lengths[k]! * load.counts[i]!, 0),
        ).toBeLessThanOrEqual(given.stick);
        expect(searchedLoad(table, given.worth, given.caps, given.stick, -1, meter).load?.worth ?? 0).toBe(
          best,
        );
      }),
    );
  });

  test('a coarse table never promises too little', () => {
    fc.assert(
      fc.property(knapsacks, fc.integer({ min: 2, max: 5 }), (given, step) => {
        const meter = { spent: 0 };
        const width = Math.floor(given.stick / step) + 1;
        const table = {
          lengths: given.lengths,
          step,
          width,
          values: new Float64Array((given.lengths.length + 1) * width),
        };
        fillSuffixTable(table, given.worth, given.caps, meter);
        const best = Math.max(...everyLoad(given));
        expect(suffixBound(table, given.stick)).toBeGreaterThanOrEqual(best);
        expect(searchedLoad(table, given.worth, given.caps, given.stick, -1, meter).load?.worth ?? 0).toBe(
          best,
        );
      }),
    );
  });

  test('all loads above a worth are found', () => {
    fc.assert(
      fc.property(knapsacks, fc.integer({ min: 1, max: 60 }), (given, least) => {
        const meter = { spent: 0 };
        const single = { ...given, caps: given.caps.map((cap) => Math.min(1, cap)) };
        const table = openSuffixTable(single.lengths, single.stick);
        fillSuffixTable(table, single.worth, single.caps, meter);
        const found = allLoads(table, single.worth, single.caps, single.stick, least, 1000, meter);
        expect(found).toHaveLength(everyLoad(single).filter((worth) => worth >= least).length);
      }),
    );
  });
});

test('exact cover agrees with trying all choices of sets', () => {
  const sets = fc.array(
    fc.record({
      items: fc.uniqueArray(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 4 }),
      share: fc.integer({ min: 0, max: 3 }),
    }),
    { minLength: 1, maxLength: 10 },
  );
  fc.assert(
    fc.property(
      sets,
      fc.integer({ min: 0, max: 6 }),
      fc.integer({ min: 1, max: 4 }),
      (given, budget, most) => {
        const all = given.map((set) => ({
          items: [...set.items].sort((a, b) => a - b),
          share: set.share,
          cost: 1,
          stock: 0,
        }));
        const answer = exactCover(
          { items: 6, sets: all, budget, money: 6, copies: Int32Array.of(most) },
          1e6,
        );
        const covers = (chosen: readonly number[]): boolean => {
          const items = chosen.flatMap((s) => all[s]!.items);
          const share = chosen.reduce((sum, s) => sum + all[s]!.share, 0);
          return items.length === 6 && new Set(items).size === 6 && share <= budget && chosen.length <= most;
        };
        const exists = Array.from({ length: 2 ** all.length }, (_, bits) =>
          all.flatMap((_set, s) => ((bits >> s) & 1 ? [s] : [])),
        ).some(covers);
        expect(answer.complete).toBe(true);
        expect(answer.chosen !== null).toBe(exists);
        if (answer.chosen !== null) expect(covers(answer.chosen)).toBe(true);
      },
    ),
  );
});

/** A job of sticks in inches, kerf 1/8: boards 3 1/2 wide, parts as wide. */
function trimJob(
  sticks: readonly (readonly [length: number, copies: number, cost: number])[],
  parts: readonly (readonly [length: number, copies: number])[],
): Job {
  return {
    name: 'trim',
    shop: { ...defaultShop, endTrim: inches(0) },
    boards: sticks.map(([length, quantity, cost], b) =>
      plainBoard({ name: `stick ${b}`, length: inches(length), width: inches(3.5), quantity, cost }),
    ),
    parts: parts.map(([length, quantity], p) =>
      plainPart({ name: `part ${p}`, length: inches(length), width: inches(3.5), quantity }),
    ),
  };
}

describe('a job of sticks', () => {
  test('one board row of many copies: kerfs counted, every copy laid out, checked', () => {
    // 96 + 1/8 holds two pieces of 47 15/16 + 1/8 exactly, and not two of 48.
    const fits = finish(choose(trimJob([[96, 20, 7]], [[47.9375, 12]]), { seed: 1, effort: 1 }));
    expect(fits.proof).toEqual({ value: 42, bound: 42, gap: 0, proven: true });
    const not = finish(choose(trimJob([[96, 20, 7]], [[48, 12]]), { seed: 1, effort: 1 }));
    expect(not.proof).toEqual({ value: 84, bound: 84, gap: 0, proven: true });
  });

  test('random jobs of one or two lengths: as cheap as trying all, proven, without fault', () => {
    const jobs = fc.record({
      sticks: fc.array(
        fc.tuple(fc.integer({ min: 30, max: 48 }), fc.constant(9), fc.integer({ min: 3, max: 6 })),
        { minLength: 1, maxLength: 2 },
      ),
      parts: fc.array(fc.tuple(fc.integer({ min: 6, max: 30 }), fc.integer({ min: 1, max: 2 })), {
        minLength: 1,
        maxLength: 4,
      }),
    });
    fc.assert(
      fc.property(jobs, ({ sticks, parts }) => {
        const job = trimJob(sticks, parts);
        expect(isSticks(buildInstance(job))).toBe(true);
        const choice = finish(choose(job, { seed: 1, effort: 1 }));
        const least = leastCost(
          sticks,
          parts.flatMap(([length, copies]) => Array.from({ length: copies }, () => length + 1 / 8)),
        );
        expect(choice.proof.value).toBeCloseTo(least, 9);
        expect(choice.proof.proven).toBe(true);
        expect(verify(job, layOut(job, choice))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('not a job of sticks: a defect, two side by side, pieces too short to rip', () => {
    const job = trimJob([[96, 3, 7]], [[20, 4]]);
    const [board, part] = [job.boards[0]!, job.parts[0]!];
    const is = (change: Partial<Job>): boolean => isSticks(buildInstance({ ...job, ...change }));
    expect(is({})).toBe(true);
    const rot = {
      kind: 'rot',
      face: 'through',
      x: inches(5),
      y: inches(0),
      length: inches(1),
      width: inches(1),
    } as const;
    expect(is({ boards: [{ ...board, defects: [rot] }] })).toBe(false);
    expect(is({ boards: [{ ...board, width: inches(7.5) }] })).toBe(false);
    expect(is({ parts: [{ ...part, width: inches(3) }] })).toBe(true);
    expect(is({ parts: [{ ...part, width: inches(3), length: inches(11) }] })).toBe(false);
    expect(is({ shop: { ...job.shop, goal: 'most value' } })).toBe(false);
  });
});

/** Each piece in turn into every open stick or a new one of either length. */
function leastCost(
  sticks: readonly (readonly [number, number, number])[],
  pieces: readonly number[],
): number {
  let best = Infinity;
  const open: number[] = [];
  const visit = (piece: number, cost: number): void => {
    if (cost >= best) return;
    if (piece === pieces.length) {
      best = cost;
      return;
    }
    for (let s = 0; s < open.length; s += 1) {
      if (open[s]! < pieces[piece]! - 1e-9) continue;
      open[s]! -= pieces[piece]!;
      visit(piece + 1, cost);
      open[s]! += pieces[piece]!;
    }
    for (const [length, , price] of sticks) {
      if (length + 1 / 8 < pieces[piece]! - 1e-9) continue;
      open.push(length + 1 / 8 - pieces[piece]!);
      visit(piece + 1, cost + price);
      open.pop();
    }
  };
  visit(0, 0);
  return best;
}

test('sticks of which no plan lays out all pieces are answered all the same', () => {
  const cell = 8128;
  const job = {
    name: 'too few',
    shop: {
      ...defaultShop,
      endTrim: ticks(0),
      edgeTrim: ticks(0),
      ripKerf: ticks(0),
      crosscutKerf: ticks(0),
    },
    parts: [
      { ...plainPart({ name: 'a', length: 6 * cell, width: 3 * cell }), quantity: 4 },
      plainPart({ name: 'b', length: 5 * cell, width: 3 * cell }),
    ],
    boards: [4, 7, 4].map((length, index) => ({
      ...plainBoard({ name: `b${index}`, length: length * cell, width: (index === 1 ? 3 : 5) * cell }),
      cost: [9, 19, 14][index]!,
    })),
  };
  const { patterns, short } = finish(choose(job, { seed: 1, effort: 0.05 }));
  expect(patterns.length).toBe(1);
  expect(short.reduce((sum, { copies }) => sum + copies, 0)).toBe(4);
});
