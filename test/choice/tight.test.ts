import { describe, expect, test } from 'vitest';
import { choose } from '../../src/flow/choice/choose.ts';
import type { StockGroup } from '../../src/flow/choice/instance.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { coverExactly } from '../../src/flow/choice/tight/cover.ts';
import { grownArea } from '../../src/flow/choice/areas.ts';
import { tightPatterns } from '../../src/flow/choice/tight/tight-patterns.ts';
import { openStripPricer } from '../../src/flow/patterns/strip/strip-pricer.ts';
import { perfectJob } from '../laws/perfect-job.ts';
import { seeded } from '../laws/seeded.ts';
import { wrongWith } from '../patterns/strip/cuttable.ts';
import { maximalCounts } from '../patterns/strip/every-cut.ts';
import { type PlateCase, plateCase, printed } from '../patterns/strip/random-plate.ts';

const fineness = {
  patternX: 99,
  patternY: 99,
  boundX: 99,
  boundY: 99,
  roughX: 99,
  roughY: 99,
  mostStarts: 9,
};

function groupOf({ plate, kinds }: PlateCase): StockGroup {
  const pricer = openStripPricer(plate, kinds, fineness, { spent: 0 });
  return {
    board: 0,
    copies: 1,
    cost: 1,
    rate: 0,
    claims: new Float64Array(kinds.length),
    beside: null,
    plate,
    kinds,
    pricer,
  };
}

const steps = 100_000;

/** Patterns of a tiny plate that lose no more than this share of it, and whether they are all. */
function listed(one: PlateCase, share: number): ReturnType<typeof tightPatterns> {
  const group = groupOf(one);
  const demand = one.kinds.map(({ cap }) => cap);
  const loss = share * grownArea(group, one.plate);
  return tightPatterns(group, 0, demand, loss, { steps, mostBlocks: 5000 });
}

const cases = Array.from({ length: 1200 }, (_, index) => plateCase(index + 1, false));

describe('patterns that lose little', () => {
  test('can be cut from the plate, whatever its flaws', () => {
    let count = 0;
    for (const one of cases) {
      for (const { column } of listed(one, 0.4).patterns) {
        expect(wrongWith(one.plate, one.kinds, column.placements), printed(one)).toEqual([]);
        count += 1;
      }
    }
    expect(count).toBeGreaterThan(1000);
  });

  test('are all there are on a clear plate: each largest set of pieces is among them', () => {
    let count = 0;
    for (const one of cases) {
      const isClear = one.plate.clearances.every((list) => list.length === 0);
      if (!isClear || one.plate.shortestRip > 0) continue;
      const { patterns, isComplete } = listed(one, 1);
      if (!isComplete) continue;
      const keys = new Set(patterns.map(({ column }) => `${column.kinds.join()}|${column.counts.join()}`));
      for (const counts of maximalCounts(one.plate, one.kinds)) {
        const kinds = [...counts.keys()].filter((kind) => counts[kind]! > 0);
        if (kinds.length === 0) continue;
        const key = `${kinds.join()}|${kinds.map((kind) => counts[kind]).join()}`;
        expect(keys.has(key), `${key} of ${printed(one)}`).toBe(true);
        count += 1;
      }
    }
    expect(count).toBeGreaterThan(200);
  });

  test('lose what they say, and no more than allowed', () => {
    for (const one of cases) {
      if (one.plate.clearances.some((list) => list.length > 0)) continue;
      const group = groupOf(one);
      const whole = grownArea(group, one.plate);
      for (const { column, loss } of listed(one, 0.3).patterns) {
        const used = column.placements.reduce((sum, piece) => sum + grownArea(group, piece), 0);
        expect(loss, printed(one)).toBeCloseTo(whole - used, 6);
        expect(loss).toBeLessThanOrEqual(0.3 * whole);
      }
    }
  });
});

describe('an exact cover', () => {
  test('is found exactly where some choice of patterns is one, compared with every choice', () => {
    let found = 0;
    for (let seed = 1; seed <= 400; seed += 1) {
      const random = seeded(seed);
      const kinds = random.whole(2, 5);
      const copies = Int32Array.from({ length: 3 }, () => random.whole(1, 2));
      const demand = Int32Array.from({ length: kinds }, () => random.whole(1, 2));
      const patterns = Array.from({ length: 9 }, () => {
        const counts = Array.from({ length: kinds }, () => (random.chance(0.4) ? random.whole(1, 2) : 0));
        const used = [...counts.keys()].filter((kind) => counts[kind]! > 0);
        const group = random.whole(0, 2);
        const column = { group, placements: [], kinds: used, counts: used.map((k) => counts[k]!), cost: 1 };
        return { column, loss: random.whole(0, 3) };
      }).filter(({ column }) => column.kinds.length > 0);
      const most = random.whole(0, 4);
      const isCover = (index: number, wanted: Int32Array, left: Int32Array, lost: number): boolean => {
        if (lost > most || wanted.some((count) => count < 0) || left.some((count) => count < 0)) return false;
        if (wanted.every((count) => count === 0)) return true;
        if (index === patterns.length) return false;
        if (isCover(index + 1, wanted, left, lost)) return true;
        const { column, loss } = patterns[index]!;
        const less = wanted.slice();
        column.kinds.forEach((kind, i) => (less[kind] = less[kind]! - column.counts[i]!));
        const fewer = left.slice();
        fewer[column.group] = fewer[column.group]! - 1;
        return isCover(index, less, fewer, lost + loss);
      };
      const answer = coverExactly(patterns, { demand, copies }, most, { left: 1e5 });
      expect(answer !== null, `seed ${seed}`).toBe(isCover(0, demand, copies, 0));
      if (answer === null) continue;
      found += 1;
      const made = new Int32Array(kinds);
      for (const { kinds: used, counts } of answer)
        used.forEach((kind, i) => (made[kind] = made[kind]! + counts[i]!));
      expect(made).toEqual(demand);
    }
    expect(found).toBeGreaterThan(30);
    expect(found).toBeLessThan(370);
  });
});

describe('a job that can be laid out without waste', () => {
  test.each([
    { seed: 1, sources: 6, pieces: 40, decoys: 8 },
    { seed: 2, sources: 6, pieces: 40, decoys: 8 },
    { seed: 6, sources: 4, pieces: 30, decoys: 6 },
    { seed: 5, sources: 10, pieces: 70, decoys: 12 },
  ])('comes out at the cost of its boards: %o', (given) => {
    const { job, sourceCost } = perfectJob(given);
    const { proof, short } = finish(choose(job, { seed: 1, effort: 0.2 }));
    expect(short).toEqual([]);
    expect(proof.value).toBeCloseTo(sourceCost, 6);
    expect(proof.proven).toBe(true);
  });
});
