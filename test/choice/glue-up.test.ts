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
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { type Seeded, seeded } from '../laws/seeded.ts';
import { bestTotal, penalties } from './oracle/best-layout.ts';

/** What jointing takes off a strip's width, so that strips are whole cells too. */
const cell = 1016;
const shop = {
  ...defaultShop,
  ...{ endTrim: ticks(0), edgeTrim: ticks(0), shortestRip: ticks(0), shortestPiece: ticks(0) },
  ...{ leastOffcutLength: ticks(cell), leastOffcutWidth: ticks(cell), gluedWidthAllowance: ticks(0) },
};
const thin = ticks(2000);
const thick = ticks(6000);

const loaded: { highs?: Highs } = {};
beforeAll(async () => {
  loaded.highs = await outsideSolver();
});

function board(random: Seeded, index: number): Board {
  const size = { length: random.whole(4, 8) * cell, width: random.whole(2, 5) * cell };
  const defects = random.chance(0.4)
    ? [
        {
          kind: random.pick(['rot', 'stain'] as const),
          face: random.pick(['A', 'through'] as const),
          x: random.whole(0, size.length / cell - 1) * cell,
          y: random.whole(0, size.width / cell - 1) * cell,
          length: cell,
          width: cell,
        },
      ]
    : [];
  const tone = random.pick(['pale', 'pale', 'red']);
  return { ...plainBoard({ name: `b${index}`, ...size }), cost: random.whole(3, 20), tone, defects };
}

/** A part of up to three strips, and one or two more; all lengths whole cells. */
function gluedJob(seed: number): Job {
  const random = seeded(seed * 31);
  const kerf = ticks(random.pick([0, cell]));
  const glued = {
    ...plainPart({ name: 'panel', length: random.whole(3, 6) * cell, width: 6 * cell }),
    ...{ glueUp: 3, quantity: random.whole(1, 2), thickness: thin, show: random.whole(0, 1) },
  };
  const narrow = random.chance(0.5) ? { ...glued, width: ticks(4 * cell), glueUp: 2 } : glued;
  const others = Array.from({ length: random.whole(1, 2) }, (_, index): Part => ({
    ...plainPart({
      name: `p${index}`,
      length: random.whole(1, 5) * cell,
      width: random.whole(1, 3) * cell,
    }),
    thickness: thin,
    quality: 'sound',
  }));
  return {
    name: `glued ${seed}`,
    shop: {
      ...shop,
      ripKerf: kerf,
      crosscutKerf: kerf,
      gluedLengthAllowance: ticks(seed % 3 === 0 ? cell : 0),
    },
    parts: [narrow, ...others],
    boards: Array.from({ length: random.whole(2, 4) }, (_, index) => board(random, index)),
  };
}

/** How the copies may be made: for each a number of strips and the tone they come from. */
function assignments(job: Job): { strips: number; tone: string }[][] {
  const { glueUp, quantity, show } = job.parts[0]!;
  const tones = [...new Set(job.boards.map(({ tone }) => tone))];
  const one = Array.from({ length: glueUp }, (_, index) => index + 1).flatMap((strips) =>
    tones.map((tone) => ({ strips, tone })),
  );
  if (quantity === 1) return one.map((each) => [each]);
  // All that shows is of one tone; what is hidden only strip for strip.
  return one.flatMap((a) => one.filter((b) => show === 0 || a.tone === b.tone).map((b) => [a, b]));
}

/**
 * The least cost when the copies are made so, by the integer solver over every way to cut; Infinity when it lacks a
 * piece. Boards of another tone are kept from the strips by being too thin for them, which needs one tone for both
 * copies: copies of two tones are left to the bound below.
 */
function leastCost(job: Job, made: readonly { strips: number; tone: string }[]): number {
  const [panel, ...rest] = job.parts;
  const tone = made[0]!.tone;
  const parts = made.map(({ strips }): Part => {
    const width = panel!.width / strips + (strips > 1 ? cell : 0);
    return {
      ...panel!,
      name: `${strips}`,
      quantity: strips,
      length: ticks(panel!.length + (strips > 1 ? job.shop.gluedLengthAllowance : 0)),
      width: ticks(width),
      glueUp: 1,
      thickness: thick,
    };
  });
  const boards = job.boards.map((one) => ({
    ...one,
    dressedThickness: ticks(one.tone === tone ? 6604 : 3000),
  }));
  const tiny = { job: { ...job, parts: [...parts, ...rest], boards }, cell };
  const best = bestTotal(loaded.highs!, tiny);
  return best >= Math.min(...penalties(tiny)) ? Infinity : best;
}

describe('glue-ups', () => {
  test('of tiny jobs: the least cost over every way to make and cut them lies between bound and value', () => {
    const tally = { met: 0, proven: 0, glued: 0 };
    let compared = 0;
    for (let seed = 1; seed <= 40; seed += 1) {
      const job = gluedJob(seed);
      const layout = layOut(job, finish(chooseMatching(job, { seed: 1, effort: 0.5 })));
      expect(
        verify(job, layout).map((fault) => describeFault(fault)),
        job.name,
      ).toEqual([]);
      const same = assignments(job).filter((made) => made.every(({ tone }) => tone === made[0]!.tone));
      const least = Math.min(...same.map((made) => leastCost(job, made)));
      if (least === Infinity) continue;
      compared += 1;
      const { value, bound, proven } = layout.proof;
      expect(layout.short, `${job.name}: can be laid out for ${least}`).toEqual([]);
      expect(bound, `${job.name}: bound ${bound}, least ${least}`).toBeLessThanOrEqual(least + 1e-6);
      if (proven) expect(value, job.name).toBeLessThanOrEqual(least + 1e-6);
      if (proven) tally.proven += 1;
      if (value <= least + 1e-6) tally.met += 1;
      if (layout.boards.some(({ pieces }) => pieces.some(({ strip }) => strip !== undefined)))
        tally.glued += 1;
    }
    expect(compared).toBeGreaterThan(10);
    // Not laws, but a search that falls below these has lost something.
    expect(tally.met).toBeGreaterThanOrEqual(0.8 * compared);
    expect(tally.proven).toBeGreaterThanOrEqual(0.6 * compared);
    expect(tally.glued).toBeGreaterThan(2);
  });
});
