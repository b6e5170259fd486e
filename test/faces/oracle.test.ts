import type { Highs } from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { ticks } from '../../src/base/units/tick.ts';
import { describeFault } from '../../src/flow/check/describe-fault.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { chooseMatching } from '../../src/flow/choice/choose-matching.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { outsideSolver } from '../base/lp/outside-solver.ts';
import { bestTotal, penalties } from '../choice/oracle/best-layout.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { type Seeded, seeded } from '../laws/seeded.ts';

const cell = 1016;
const thin = ticks(2000);
const thick = ticks(6000);
/** Ends whose kerf is a whole number of cells: square, and 60 degrees, where a blade of one cell takes two. */
const ends = [0, 60] as const;

const loaded: { highs?: Highs } = {};
beforeAll(async () => {
  loaded.highs = await outsideSolver();
});

function board(random: Seeded, index: number): Board {
  const size = { length: random.whole(4, 8) * cell, width: random.whole(2, 4) * cell };
  const defects = Array.from({ length: random.whole(0, 2) }, () => ({
    kind: random.pick(['rot', 'stain', 'sound knot'] as const),
    face: random.pick(['A', 'B', 'through'] as const),
    x: random.whole(0, size.length / cell - 1) * cell,
    y: random.whole(0, size.width / cell - 1) * cell,
    length: cell,
    width: cell,
  }));
  const tone = random.pick(['pale', 'red']);
  return { ...plainBoard({ name: `b${index}`, ...size }), cost: random.whole(3, 20), tone, defects };
}

/** A run of two or three, another part that shows, one that does not; some pinned to a board or its face. */
function showJob(seed: number): Job {
  const random = seeded(seed * 97);
  const kerf = ticks(random.pick([0, cell]));
  const width = random.whole(1, 2) * cell;
  const boards = Array.from({ length: random.whole(2, 4) }, (_, index) => board(random, index));
  const pin = random.chance(0.4)
    ? { board: random.pick(boards).name, face: random.pick([null, 'A', 'B'] as const) }
    : null;
  const count = random.whole(2, 3);
  const between = Array.from({ length: count - 1 }, () => random.pick(ends));
  const accept = random.chance(0.5) ? [{ kind: 'sound knot' as const, atMost: null }] : [];
  const run = Array.from({ length: count }, (_, index): Part => ({
    ...plainPart({ name: `run ${index}`, length: random.whole(1, 2) * cell, width, show: 2, run: 'wrap' }),
    ...{ leftEnd: between[index - 1] ?? 0, rightEnd: between[index] ?? 0, accept, thickness: thin },
    pin: index === 0 ? pin : null,
  }));
  const other = (name: string, show: number): Part => ({
    ...plainPart({ name, length: random.whole(1, 4) * cell, width: random.whole(1, 2) * cell, show }),
    ...{ thickness: thin, quality: random.pick(['clear-1', 'sound', 'clear-2'] as const) },
  });
  const trims = { endTrim: ticks(0), edgeTrim: ticks(0), shortestRip: ticks(0), shortestPiece: ticks(0) };
  const least = { leastOffcutLength: ticks(cell), leastOffcutWidth: ticks(cell) };
  return {
    name: `show ${seed}`,
    shop: { ...defaultShop, ...trims, ...least, ripKerf: kerf, crosscutKerf: kerf },
    parts: [...run, other('beside', 1), other('block', 0)],
    boards,
  };
}

/** The run as one piece: its lengths, and between them the kerf, twice as wide at 60 degrees. */
function asOnePiece({ parts, shop }: Job): Part {
  const run = parts.filter((part) => part.run !== null);
  const kerfs = run.slice(1).map(({ leftEnd }) => shop.crosscutKerf * (leftEnd === 60 ? 2 : 1));
  const length = run.reduce((sum, part) => sum + part.length, 0) + kerfs.reduce((sum, kerf) => sum + kerf, 0);
  return { ...run[0]!, name: 'run', length: ticks(length), run: null, leftEnd: 0, rightEnd: 0 };
}

/** The least cost with all that shows of one tone, by the integer solver over every way to cut; other boards are too thin. */
function leastCost(job: Job, tone: string): number {
  const parts = [asOnePiece(job), ...job.parts.filter(({ run }) => run === null)].map((part): Part => ({
    ...part,
    thickness: part.show > 0 ? thick : thin,
  }));
  const boards = job.boards.map((one) => ({
    ...one,
    dressedThickness: ticks(one.tone === tone ? 6604 : 3000),
  }));
  const tiny = { job: { ...job, parts, boards }, cell };
  const best = bestTotal(loaded.highs!, tiny);
  return best >= Math.min(...penalties(tiny)) ? Infinity : best;
}

describe('runs, tones and pins', () => {
  test('bound and value hold the least cost of every way to cut between them, and meet it where proven', () => {
    const tally = { compared: 0, impossible: 0, met: 0, proven: 0, pinned: 0 };
    for (let seed = 1; seed <= 80; seed += 1) {
      const job = showJob(seed);
      const layout = layOut(job, finish(chooseMatching(job, { seed: 1, effort: 0.1 })));
      expect(
        verify(job, layout).map((fault) => describeFault(fault)),
        job.name,
      ).toEqual([]);
      const least = Math.min(...['pale', 'red'].map((tone) => leastCost(job, tone)));
      const { value, bound, proven } = layout.proof;
      if (least === Infinity) {
        expect(layout.short.length, `${job.name} cannot be laid out`).toBeGreaterThan(0);
        tally.impossible += 1;
        continue;
      }
      tally.compared += 1;
      expect(layout.short, `${job.name} can be laid out for ${least}`).toEqual([]);
      expect(bound, `${job.name}: bound above ${least}`).toBeLessThanOrEqual(least + 1e-6);
      expect(value, `${job.name}: value below ${least}`).toBeGreaterThanOrEqual(least - 1e-6);
      if (proven) expect(value, job.name).toBeCloseTo(least, 6);
      if (proven) tally.proven += 1;
      if (value <= least + 1e-6) tally.met += 1;
      if (job.parts[0]!.pin !== null) tally.pinned += 1;
    }
    expect(tally.compared).toBeGreaterThan(25);
    expect(tally.impossible).toBeGreaterThan(10);
    expect(tally.pinned).toBeGreaterThan(5);
    // Not laws, but a search that falls below these has lost something.
    expect(tally.met).toBeGreaterThanOrEqual(0.9 * tally.compared);
    expect(tally.proven).toBeGreaterThanOrEqual(0.8 * tally.compared);
  });
});
