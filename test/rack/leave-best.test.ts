import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { verify } from '../../src/flow/check/verify.ts';
import type { Choice } from '../../src/flow/choice/choice.ts';
import type { OffcutWorth } from '../../src/flow/cuts/cut-board.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import { leaveBest } from '../../src/flow/rack/leave-best.ts';
import { usualNeeds } from '../../src/flow/rack/need.ts';
import { offcutWorth } from '../../src/flow/rack/offcut-worth.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { cuttableJobs } from '../laws/arbitraries.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';

const kerf = { rip: defaultShop.ripKerf, crosscut: defaultShop.crosscutKerf };
const worth = offcutWorth(usualNeeds, kerf);

/** A choice by hand: the pieces on one board. */
function choiceOf(
  pieces: readonly { part: number; copy: number; x: number; y: number; length: number; width: number }[],
): Choice {
  return {
    patterns: [{ board: 0, copy: 1, pieces: pieces.map((piece) => ({ ...piece, showFace: null })) }],
    short: [],
    proof: { value: 1, bound: 1, gap: 0, proven: true },
  };
}

describe('the offcuts that a layout leaves', () => {
  const shop = { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0) };
  const part = plainPart({ name: 'p', quantity: 2, length: inches(20), width: inches(3), quality: 'any' });
  const job: Job = {
    name: 'j',
    shop,
    parts: [part],
    boards: [plainBoard({ name: 'B', length: inches(100), width: inches(6.125) })],
  };
  const piece = (copy: number, x: number, y: number): Parameters<typeof choiceOf>[0][number] => ({
    part: 0,
    copy,
    x: inches(x),
    y: inches(y),
    length: inches(20),
    width: inches(3),
  });

  it('are one wide piece rather than two narrow ones, where the cost is the same', () => {
    // One behind the other along the near edge: 59 3/4 × 3 and 100 × 3 would be left.
    const before = choiceOf([piece(1, 0, 0), piece(2, 20.125, 0)]);
    const after = layOut(job, leaveBest(job, before, worth), worth);
    expect(verify(job, { ...after, proof: { value: 1, bound: 1, gap: 0, proven: true } })).toEqual([]);
    expect(after.boards[0]?.offcuts.map(({ length, width }) => [length / 8128, width / 8128])).toEqual([
      [79.875, 6.125],
    ]);
    expect(after.boards[0]?.cuts.length).toBeLessThanOrEqual(layOut(job, before).boards[0]?.cuts.length ?? 0);
  });

  it('stay as they are where nothing is better', () => {
    const best = leaveBest(job, choiceOf([piece(1, 0, 0), piece(2, 20.125, 0)]), worth);
    expect(leaveBest(job, best, worth)).toEqual(best);
  });

  it('keep clear of defects: a piece is moved to clear wood only', () => {
    const split = {
      kind: 'split',
      face: 'through',
      x: 0,
      y: 0,
      length: inches(30),
      width: inches(6.125),
    } as const;
    const flawed: Job = {
      ...job,
      parts: [{ ...part, quality: 'clear-1' }],
      boards: [{ ...job.boards[0]!, defects: [split] }],
    };
    const before = choiceOf([piece(1, 40, 0), piece(2, 60.125, 0)]);
    const after = layOut(flawed, leaveBest(flawed, before, worth), worth);
    expect(after.boards[0]?.pieces.every(({ x }) => x >= inches(30))).toBe(true);
    expect(Math.max(...(after.boards[0]?.offcuts.map(({ length }) => length) ?? []))).toBeGreaterThanOrEqual(
      inches(49.75),
    );
  });
});

/** A layout as it was chosen, and as it leaves the best offcuts. */
function bothWays(
  job: Job,
  choice: Choice,
): { readonly judge: OffcutWorth; readonly before: Layout; readonly after: Layout } {
  const judge = offcutWorth(usualNeeds, { rip: job.shop.ripKerf, crosscut: job.shop.crosscutKerf });
  return {
    judge,
    before: layOut(job, choice, judge),
    after: layOut(job, leaveBest(job, choice, judge), judge),
  };
}

describe('over random jobs', () => {
  it('the layout stays sound, costs no more, takes no more cuts and leaves no worse', () => {
    fc.assert(
      fc.property(cuttableJobs({ boards: 3, pieces: 9 }), ({ job, choice }) => {
        const { judge, before, after } = bothWays(job, choice);
        expect(verify(job, after)).toEqual([]);
        expect(after.totals.cost).toBe(before.totals.cost);
        const earns = job.shop.offcutCredit > 0 && job.shop.goal === 'least cost';
        after.boards.forEach((board, index) => {
          const was = before.boards[index]!;
          if (earns) expect(board.area.offcuts).toBeGreaterThanOrEqual(was.area.offcuts);
          if (earns && board.area.offcuts > was.area.offcuts) return;
          expect(board.cuts.length).toBeLessThanOrEqual(was.cuts.length);
          if (board.cuts.length < was.cuts.length) return;
          const wood = job.boards.find(({ name }) => name === board.board)!;
          const useful = ({ offcuts }: typeof board): number =>
            offcuts.reduce((sum, offcut) => sum + judge(wood, offcut), 0);
          expect(useful(board)).toBeGreaterThanOrEqual(useful(was));
        });
      }),
      { numRuns: 80 },
    );
  });

  it('is of use: many a board is laid out otherwise than it was', () => {
    let otherwise = 0;
    for (const { job, choice } of fc.sample(cuttableJobs({ boards: 3, pieces: 9 }), {
      numRuns: 80,
      seed: 1,
    })) {
      const { before, after } = bothWays(job, choice);
      after.boards.forEach((board, index) => {
        if (JSON.stringify(board.pieces) !== JSON.stringify(before.boards[index]!.pieces)) otherwise += 1;
      });
    }
    expect(otherwise).toBeGreaterThan(5);
  });
});
