import { describe, expect, it } from 'vitest';
import { type Tick, inches, ticks } from '../../src/base/units/tick.ts';
import { areaBound } from '../../src/flow/choice/bound.ts';
import { buildInstance } from '../../src/flow/choice/build-instance.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { type Shop, defaultShop } from '../../src/flow/shop/shop.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';

/** Parts of one run: quantity, length and width in inches. */
function runOf(rows: readonly (readonly [number, number, number])[]): Part[] {
  return rows.map(([quantity, length, width], index) => ({
    ...plainPart({ name: `part ${index + 1}`, quantity, length: inches(length), width: inches(width) }),
    run: 'wrap',
  }));
}

function boardOf(length: number, width: number, cost = 10): Board {
  return { ...plainBoard({ name: 'board', length: inches(length), width: inches(width) }), cost };
}

function jobOf(boards: readonly Board[], parts: readonly Part[], over: Partial<Shop> = {}): Job {
  return { name: 'runs', shop: { ...defaultShop, ...over }, parts, boards };
}

/** The checked layout of a job, at once. */
function laid(job: Job): Layout {
  const { layout, faults } = finish(layOutJob(job, { seed: 1, effort: 0 }));
  expect(faults).toEqual([]);
  return layout;
}

/** How many pieces lie in a run, and how many do not. */
function counts({ boards }: Layout): readonly [number, number] {
  const pieces = boards.flatMap((board) => board.pieces);
  const inRuns = pieces.filter(({ run }) => run !== undefined).length;
  return [inRuns, pieces.length - inRuns];
}

const goals = ['least cost', 'most value'] as const;
const stages = [1, 2, 3, 4, 5, 'any'] as const;

describe('the crosscuts of a run take their stage', () => {
  it.each(goals.flatMap((goal) => stages.map((most) => [goal, most] as const)))(
    'on a board as wide as the run: %s, %s stages',
    (goal, most) => {
      const job = jobOf(
        [boardOf(61, 3)],
        runOf([
          [1, 10, 3],
          [1, 20, 3],
        ]),
        { goal, stages: most },
      );
      expect(laid(job).short).toEqual([]);
    },
  );

  it.each(goals.flatMap((goal) => stages.map((most) => [goal, most] as const)))(
    'on a wider board, and of three widths: %s, %s stages',
    (goal, most) => {
      const even = runOf([
        [1, 14, 3],
        [1, 20, 3],
      ]);
      const uneven = runOf([
        [1, 14, 5],
        [2, 20, 3],
        [2, 12, 4],
      ]);
      for (const parts of [even, uneven]) {
        const layout = laid(
          jobOf([boardOf(90, 8), boardOf(61, 12, 20)].map(named), parts, { goal, stages: most }),
        );
        // In one stage nothing is ripped, and no board is as narrow as the run.
        expect(counts(layout)[0]).toBe(most === 1 ? 0 : parts === even ? 2 : 5);
      }
    },
  );

  it('in one stage what is not as wide as the board is known to be short without a search', () => {
    const parts = [plainPart({ name: 'part', length: inches(10), width: inches(3), quantity: 2 })];
    const job = jobOf([boardOf(61, 3.5), boardOf(80, 5, 20)].map(named), parts, { stages: 1 });
    expect(buildInstance(job).groups).toEqual([]);
    expect(laid(job)).toMatchObject({ short: [{ part: 'part', copies: 2 }], proof: { proven: true } });
  });

  it('in two stages pieces too short to be ripped are not laid, and said to be short', () => {
    const job = jobOf(
      [boardOf(61, 12)],
      runOf([
        [1, 10, 3],
        [1, 20, 3],
      ]),
      { stages: 2 },
    );
    expect(laid(job).short.map(({ part }) => part)).toEqual(['part 1', 'part 2']);
  });

  function named(board: Board, index: number): Board {
    return { ...board, name: `board ${index}` };
  }
});

describe('a copy of a run that holds one part', () => {
  it.each([
    [0, 1],
    [1, 0],
    [1, 2],
    [1, 3],
    [3, 1],
    [2, 2],
  ])('is an ordinary piece: %i and %i copies', (one, two) => {
    const layout = laid(
      jobOf(
        [boardOf(96, 8)],
        runOf([
          [one, 20, 4],
          [two, 10, 4],
        ]),
      ),
    );
    expect(layout.short).toEqual([]);
    expect(counts(layout)).toEqual([2 * Math.min(one, two), Math.abs(one - two)]);
  });

  it('may lie as its grain says, where the run itself may not', () => {
    const parts = runOf([
      [2, 5, 10],
      [1, 20, 4],
    ]).map((part, index): Part => (index === 0 ? { ...part, grain: 'across' } : part));
    const layout = laid(jobOf([boardOf(96, 6)], parts));
    expect(counts(layout)).toEqual([0, 1]);
    expect(layout.short).toMatchObject([
      { part: 'part 1', copies: 1, why: expect.stringContaining('that of part 1 is to run across') },
      { part: 'part 2', copies: 1 },
    ]);
  });
});

describe('a run of unequal widths', () => {
  it.each([
    [3, 4, 5],
    [5, 4, 3],
    [3, 5, 4],
    [5, 3, 4],
  ])('is laid as it comes: %i, %i, %i', (one, two, three) => {
    const bevelled = runOf([
      [1, 12, one],
      [1, 12, two],
      [1, 12, three],
    ]).map((part) => ({ ...part, leftEnd: 45, rightEnd: 45 }));
    expect(laid(jobOf([boardOf(96, 12)], bevelled)).short).toEqual([]);
  });
});

describe('the bound from areas', () => {
  it('takes 20,000 boards of different prices', () => {
    const job = jobOf(
      [boardOf(60, 5)],
      [plainPart({ name: 'part', length: inches(40), width: inches(4), quantity: 3 })],
    );
    const one = buildInstance(job);
    const groups = Array.from({ length: 20_000 }, (_, index) => ({
      ...one.groups[0]!,
      cost: 10 + index / 8,
    }));
    expect(areaBound({ ...one, groups })).toBeCloseTo(10 + 10.125, 6);
  });

  it('of boards of many sizes is the least cost of a set that is large enough', () => {
    const sizes: readonly (readonly [Tick, number])[] = [3, 5, 7, 8].map((width) => [
      ticks(width * 8128),
      2 + width ** 1.1,
    ]);
    const shop = { endTrim: inches(0), ripKerf: inches(0), crosscutKerf: inches(0) };
    const boards = sizes.map(([width, cost], index) => ({
      ...boardOf(10, 1, cost),
      width,
      name: `board ${index}`,
    }));
    const parts = [plainPart({ name: 'part', length: inches(10), width: inches(1), quantity: 14 })];
    const sets = Array.from({ length: 16 }, (_, set) =>
      boards.filter((_board, index) => (set >> index) % 2 === 1),
    );
    const enough = sets.filter((set) => set.reduce((sum, { width }) => sum + width / 8128, 0) >= 14);
    const least = Math.min(...enough.map((set) => set.reduce((sum, { cost }) => sum + cost, 0)));
    expect(areaBound(buildInstance(jobOf(boards, parts, shop)))).toBeCloseTo(least, 6);
  });
});
