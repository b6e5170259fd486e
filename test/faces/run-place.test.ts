import { describe, expect, it } from 'vitest';
import { inches, ticksPerInch } from '../../src/base/units/tick.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { type Seeded, seeded } from '../laws/seeded.ts';

const inch = ticksPerInch;
const options = { seed: 1, effort: 0.02 };
const shop = { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0), shortestRip: inches(0) };

function run(random: Seeded): Part[] {
  const count = random.whole(2, 4);
  const ends = Array.from({ length: count + 1 }, () => random.pick([0, 22.5, 45]));
  return Array.from({ length: count }, (_, index) => ({
    ...plainPart({ name: `p${index}`, length: inch * random.whole(2, 6), width: 2 * inch, show: 1 }),
    run: 'r',
    leftEnd: index === 0 ? 0 : ends[index]!,
    rightEnd: index === count - 1 ? 0 : ends[index + 1]!,
  }));
}

function board(random: Seeded, index: number): Board {
  const size = { length: inch * random.whole(8, 24), width: inch * random.whole(2, 4) };
  const defects = Array.from({ length: random.whole(0, 3) }, () => ({
    kind: random.pick(['sound knot', 'hole', 'stain'] as const),
    face: random.pick(['A', 'B', 'through'] as const),
    x: inch * random.whole(0, size.length / inch - 1),
    y: inch * random.whole(0, size.width / inch - 1),
    length: inch,
    width: inch,
  }));
  // Powers of two: no two sets of boards cost the same.
  return { ...plainBoard({ name: `B${index}`, ...size }), cost: 2 ** index, tone: 'one', defects };
}

/** Kerf of a 1/8 in blade along the face, whole ticks up, by the tables of sines: 0, 22.5 and 45 degrees. */
const kerfs = new Map([
  [0, 1016],
  [22.5, 1100],
  [45, 1437],
]);

/** Places of the strip on the board: every inch along and across (defects and sizes lie on inches), both faces; by brute force. */
function holds(on: Board, length: number): boolean {
  for (const face of ['A', 'B'] as const) {
    for (let x = 0; x + length <= on.length; x += inch) {
      for (let y = 0; y + 2 * inch <= on.width; y += inch) {
        const isClear = on.defects.every((flaw) => {
          const matters = flaw.kind === 'hole' || flaw.face === 'through' || flaw.face === face;
          const meets =
            flaw.x < x + length && x < flaw.x + inch && flaw.y < y + 2 * inch && y < flaw.y + inch;
          return !matters || !meets;
        });
        if (isClear) return true;
      }
    }
  }
  return false;
}

describe('random runs', () => {
  const jobs = Array.from({ length: 120 }, (_, index): Job => {
    const random = seeded(index + 1);
    const boards = [0, 1, 2, 3].map((at) => board(random, at));
    return { name: `run ${index}`, shop, parts: run(random), boards };
  });

  it('lie exactly where brute force finds the cheapest board with room, pieces one after another', () => {
    let found = 0;
    for (const job of jobs) {
      const between = job.parts.slice(1).map((part, index) => {
        return kerfs.get(Math.max(job.parts[index]!.rightEnd, part.leftEnd))!;
      });
      const length =
        job.parts.reduce((sum, part) => sum + part.length, 0) + between.reduce((sum, kerf) => sum + kerf, 0);
      const cheapest = job.boards.find((one) => holds(one, length));
      const { layout, faults } = finish(layOutJob(job, options));
      expect(faults).toEqual([]);
      if (cheapest === undefined) {
        expect(layout.short.length, job.name).toBe(job.parts.length);
        continue;
      }
      found += 1;
      expect(layout.proof, job.name).toMatchObject({
        value: cheapest.cost,
        bound: cheapest.cost,
        proven: true,
      });
      const pieces = layout.boards.flatMap((laid) => laid.pieces).sort((a, b) => a.x - b.x);
      expect(pieces.map(({ part }) => part)).toEqual(job.parts.map(({ name }) => name));
      expect(new Set(pieces.map(({ showFace }) => showFace)).size).toBe(1);
      const gaps = pieces.slice(1).map((piece, index) => piece.x - pieces[index]!.x - pieces[index]!.length);
      expect(gaps).toEqual(between);
    }
    expect(found).toBeGreaterThan(40);
  });

  it('a piece a tick out of place, and one out of order, are found by the replay', () => {
    const job = jobs.find(
      (one) => one.parts.length > 2 && finish(layOutJob(one, options)).layout.boards.length > 0,
    )!;
    const { layout } = finish(layOutJob(job, options));
    const spoil = (change: (piece: { readonly x: number }) => object): string[] => {
      const boards = layout.boards.map((laid) => ({
        ...laid,
        pieces: laid.pieces.map((piece) => (piece.run?.order === 0 ? { ...piece, ...change(piece) } : piece)),
      }));
      return verify(job, { ...layout, boards }).map(({ kind }) => kind);
    };
    expect(spoil(() => ({}))).toEqual([]);
    expect(spoil(({ x }) => ({ x: x - 1 }))).toContain('bad run');
    expect(spoil(() => ({ run: { run: 0, order: 1 } }))).toContain('bad run');
  });
});
