import { inches, ticksPerInch } from '../../src/base/units/tick.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { type Seeded, seeded } from '../laws/seeded.ts';

const inch = ticksPerInch;
const width = 2 * inch;
export const kerf = 1016;

/**
 * A run called `facing` of two to four pieces and up to three others, all as wide as the two to four boards, with rot through
 * some of them: what comes out of them is a matter of lengths alone.
 */
export function narrowJob(seed: number): Job {
  const random = seeded(seed * 7_368_787);
  const pieces = random.whole(2, 4);
  const front = random.whole(0, pieces - 1);
  const run = Array.from({ length: pieces }, (_, index): Part => ({
    ...plainPart({ name: `r${index}`, length: inch * random.whole(2, 7), width }),
    show: index === front ? 3 : 2,
    run: 'facing',
  }));
  const others = Array.from({ length: random.whole(0, 3) }, (_, index) =>
    plainPart({ name: `o${index}`, length: inch * random.whole(2, 7), width }),
  );
  const boards = Array.from({ length: random.whole(2, 4) }, (_, index) => board(random, index));
  const shop = { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0), shortestRip: inches(0) };
  return { name: `narrow ${seed}`, shop, parts: [...run, ...others], boards };
}

function board(random: Seeded, index: number): Board {
  const length = inch * random.whole(4, 18);
  const rot = { kind: 'rot', face: 'through', y: 0, width, length: inch } as const;
  const defects = random.chance(0.4) ? [{ ...rot, x: inch * random.whole(1, length / inch - 2) }] : [];
  return { ...plainBoard({ name: `B${index}`, length, width }), cost: random.whole(3, 30), defects };
}

/** Clear lengths of each board, worked out by hand: what lies before, between and behind its rot. */
function clearLengths({ length, defects }: Board): number[] {
  const [rot] = defects;
  return rot === undefined ? [length] : [rot.x, length - rot.x - rot.length];
}

/**
 * The least that boards cost which hold these lengths, n of them in a clear stretch taking n − 1 kerfs; Infinity where none do. Every
 * way to share them out is tried.
 */
export function leastCost(lengths: readonly number[], boards: readonly Board[]): number {
  const bins = boards.flatMap((one, index) =>
    clearLengths(one).map((room) => ({ index, left: room + kerf })),
  );
  const used = boards.map(() => 0);
  const place = (at: number, cost: number): number => {
    if (at === lengths.length) return cost;
    return Math.min(
      Infinity,
      ...bins.map((bin) => {
        const takes = lengths[at]! + kerf;
        if (takes > bin.left) return Infinity;
        const more = used[bin.index]! === 0 ? boards[bin.index]!.cost : 0;
        bin.left -= takes;
        used[bin.index]! += 1;
        const least = place(at + 1, cost + more);
        bin.left += takes;
        used[bin.index]! -= 1;
        return least;
      }),
    );
  };
  return place(0, 0);
}

/** The lengths that must be had when the run is in these stretches. */
export function lengthsOf({ parts }: Job, stretches: readonly (readonly string[])[]): number[] {
  const length = new Map<string, number>(parts.map((part) => [part.name, part.length]));
  const others = parts.filter(({ run }) => run === null).map((part) => part.length);
  const runs = stretches.map((names) => names.reduce((sum, name) => sum + length.get(name)! + kerf, -kerf));
  return [...runs, ...others].sort((a, b) => b - a);
}
