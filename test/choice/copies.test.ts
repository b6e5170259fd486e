import { describe, expect, it } from 'vitest';
import { buildInstance } from '../../src/flow/choice/build-instance.ts';
import { emptyPool, wholeRest } from '../../src/flow/choice/generate.ts';
import { areaWorth, greedy } from '../../src/flow/choice/greedy.ts';
import type { Instance } from '../../src/flow/choice/instance.ts';
import { layOnLess } from '../../src/flow/choice/lay-on-less.ts';
import { planOf, restAfter } from '../../src/flow/choice/plan.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { roundedBound } from '../../src/flow/choice/round-bound.ts';
import { scaledBound } from '../../src/flow/choice/scaled-bound.ts';
import { type Standing, openSolving } from '../../src/flow/choice/standing.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { yardJob } from '../laws/random-job.ts';
import { seeded } from '../laws/seeded.ts';
import { plateJobs } from '../published/plate-jobs.ts';

/** The instance with boards of these costs and copies, the rest as it was. */
function withBoards(
  instance: Instance,
  boards: readonly { readonly cost: number; readonly copies: number }[],
): Instance {
  return { ...instance, groups: boards.map((each) => ({ ...instance.groups[0]!, ...each })) };
}

const plain = buildInstance(yardJob(1, { kinds: 6, pieces: 8, sizes: 1 }));

describe('the bound of prices brought down together', () => {
  it('is the most that any factor gives', () => {
    const stream = seeded(7);
    for (let draw = 0; draw < 200; draw += 1) {
      const boards = Array.from({ length: stream.whole(1, 5) }, () => ({
        cost: stream.chance(0.1) ? 0 : 1 + 9 * stream.next(),
        copies: stream.whole(0, 4),
      }));
      const instance = withBoards(plain, boards);
      const worths = Float64Array.from(boards, () => 12 * stream.next());
      const due = 40 * stream.next();
      const at = (factor: number): number =>
        boards.reduce(
          (sum, { cost, copies }, g) => sum - copies * Math.max(0, factor * worths[g]! - cost),
          factor * due,
        );
      // The most lies where some board begins to pay, or at an end.
      const corners = [0, 1, ...boards.map(({ cost }, g) => Math.min(1, cost / worths[g]!))];
      const most = Math.max(...corners.map(at));
      const bound = scaledBound(instance, wholeRest(instance), due, worths);
      expect(bound).toBeCloseTo(most, 9);
      expect(bound).toBeGreaterThanOrEqual(at(1) - 1e-9);
    }
  });
});

describe('a bound rounded up to what boards can cost', () => {
  it('is the least sum of boards from there on, no more of each than there are', () => {
    const stream = seeded(11);
    for (let draw = 0; draw < 200; draw += 1) {
      const boards = Array.from({ length: stream.whole(1, 3) }, () => ({
        cost: stream.whole(1, 30) / 2,
        copies: stream.whole(1, 3),
      }));
      const instance = withBoards(plain, boards);
      let sums = [0];
      for (const { cost, copies } of boards)
        sums = sums.flatMap((sum) => Array.from({ length: copies + 1 }, (_, many) => sum + many * cost));
      const value = sums[stream.whole(0, sums.length - 1)]!;
      if (value === 0) continue;
      const bound = value * stream.next();
      const least = Math.min(...sums.filter((sum) => sum >= bound - 1e-9));
      expect(roundedBound(instance, bound, value)).toBeCloseTo(least, 9);
    }
  });
});

describe('boards sold by quantity', () => {
  /** A greedy layout, and how it stands after the search has done so much work. */
  function searched(
    instance: Instance,
    work: number,
  ): { readonly before: number; readonly standing: Standing } {
    const way = { fine: true, fromPool: false };
    const start = finish(greedy(instance, wholeRest(instance), emptyPool(), areaWorth(instance), way));
    const best = planOf(instance, start);
    const standing: Standing = { best, bound: 0, near: [] };
    const solving = openSolving(instance, standing, 1);
    finish(layOnLess(solving, instance.meter.spent + work));
    return { before: best.objective, standing };
  }

  it.each([1, 2, 3])('a layout on fewer boards is found, whole and within the copies: yard %i', (seed) => {
    const instance = buildInstance(yardJob(seed, { kinds: 20, pieces: 40, sizes: 3 }));
    const { before, standing } = searched(instance, 5e7);
    expect(standing.best.objective).toBeLessThan(before);
    const rest = restAfter(instance, standing.best.columns);
    expect(rest.demand.every((count) => count <= 0)).toBe(true);
    expect(rest.copies.every((count) => count >= 0)).toBe(true);
  });

  it('published plates with guillotine cuts in four stages: no more than are published for any number of stages', () => {
    // A greedy takes 24 and 26 of them.
    for (const name of ['cl_01_060_08', 'cl_08_080_08']) {
      const { job, optimum } = plateJobs('guillotine_bins').find((each) => each.name === name)!;
      const instance = buildInstance({ ...job, shop: { ...job.shop, stages: 4 } });
      const { before, standing } = searched(instance, 2e8);
      expect(before).toBeGreaterThan(optimum);
      expect(standing.best.objective).toBe(optimum);
    }
  });

  it('a job of them comes to a checked layout, the same every time', () => {
    const job = yardJob(4, { kinds: 12, pieces: 24, sizes: 2 });
    const [one, two] = [0, 1].map(() => finish(layOutJob(job, { seed: 1, effort: 0.3 })));
    expect(one!.faults).toEqual([]);
    expect(one!.layout.short).toEqual([]);
    expect(two!.layout).toEqual(one!.layout);
    expect(one!.layout.proof.bound).toBeGreaterThan(0.9 * one!.layout.proof.value);
  });
});
