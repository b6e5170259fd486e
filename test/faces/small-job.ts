import { inches, ticksPerInch } from '../../src/base/units/tick.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Defect } from '../../src/flow/stock/defect.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { type Seeded, seeded } from '../laws/seeded.ts';

const inch = (random: Seeded, least: number, most: number): number =>
  random.whole(least * 2, most * 2) * (ticksPerInch / 2);

function knots(random: Seeded, board: { readonly length: number; readonly width: number }): Defect[] {
  return Array.from({ length: random.whole(0, 2) }, () => {
    const length = inch(random, 1, 2);
    const width = inch(random, 1, 2);
    return {
      kind: random.pick(['sound knot', 'loose knot', 'stain'] as const),
      face: random.pick(['A', 'B', 'through'] as const),
      x: inch(random, 0, Math.floor((board.length - length) / ticksPerInch)),
      y: inch(random, 0, Math.floor((board.width - width) / ticksPerInch)),
      length,
      width,
    };
  });
}

/** A job of three boards and three parts, two of which show; small enough to be solved to the end at once. */
export function smallJob(seed: number): Job {
  const random = seeded(seed * 7919);
  const shop = { ...defaultShop, endTrim: inches(1 / 2), shortestRip: inches(6) };
  const boards = Array.from({ length: 3 }, (_, index) => {
    const size = { length: inch(random, 30, 60), width: inch(random, 4, 7) };
    return {
      ...plainBoard({ name: `B${index + 1}`, ...size }),
      cost: random.whole(8, 30),
      lookA: random.whole(0, 10),
      lookB: random.whole(0, 10),
      defects: knots(random, size),
    };
  });
  const parts = [
    { name: 'front', show: 3, length: inch(random, 22, 36), width: inch(random, 3, 5) },
    { name: 'end', show: 2, length: inch(random, 16, 26), width: inch(random, 3, 5) },
    {
      name: 'block',
      show: 0,
      length: inch(random, 5, 14),
      width: inch(random, 2, 3),
      quality: 'any' as const,
    },
  ].map(plainPart);
  return { name: `small ${seed}`, shop, parts, boards };
}

/** The same with boards of two tones. */
export function tonedJob(seed: number): Job {
  const random = seeded(seed * 104_729);
  const job = smallJob(seed);
  const boards = job.boards.map((board) => ({ ...board, tone: random.chance(0.5) ? 'warm' : 'pale' }));
  return { ...job, boards };
}
