import { describe, expect, test } from 'vitest';
import { inches, ticks } from '../../src/base/units/tick.ts';
import { verify } from '../../src/flow/check/verify.ts';
import type { BoardPattern, Choice, PlacedPiece } from '../../src/flow/choice/choice.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import { setupList } from '../../src/flow/cuts/setup-list.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { type Shop, defaultShop } from '../../src/flow/shop/shop.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { usable } from '../../src/flow/stock/usable.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';

/** Everything by hand, in inches, with a 1/8 in blade. */
const kerf = 1 / 8;

/** No trims, so that positions can be read off. */
const bare: Shop = { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0), shortestPiece: inches(0) };

interface Laid {
  readonly part: number;
  readonly copy?: number;
  readonly x: number;
  readonly y: number;
  readonly run?: PlacedPiece['run'];
}

function jobOf(boards: readonly Board[], parts: readonly Part[], shop: Shop = bare): Job {
  return { name: 'by hand', shop: Object.freeze(shop), parts, boards };
}

/** Pieces at positions in inches; sizes are those of their parts. */
function choose(job: Job, ...boards: readonly (readonly Laid[])[]): Choice {
  const patterns = boards.map((pieces, index): BoardPattern => ({
    board: job.boards[index]?.quantity === 1 ? index : 0,
    copy: job.boards[index]?.quantity === 1 ? 1 : index + 1,
    pieces: pieces.map(({ part, copy = 1, x, y, run }) => {
      const { length, width } = job.parts[part] as Part;
      const at = { x: inches(x), y: inches(y), length, width };
      return { ...at, part, copy, showFace: 'A', ...(run === undefined ? {} : { run }) };
    }),
  }));
  return { patterns, short: [], proof: { value: -1, bound: 0, gap: 1, proven: false } };
}

function board(length: number, width: number, over: Partial<Board> = {}): Board {
  return { ...plainBoard({ name: 'B', length: inches(length), width: inches(width), cost: 12 }), ...over };
}

function part(name: string, length: number, width: number, over: Partial<Part> = {}): Part {
  return { ...plainPart({ name, length: inches(length), width: inches(width) }), ...over };
}

/** Cuts of the first board as lines to read, in inches. */
function cutLines(layout: Layout): string[] {
  const inch = (length: number): number => length / 8128;
  return (layout.boards[0]?.cuts ?? []).map(({ step, kind, region, at, purpose }) => {
    const { x, y, length, width } = region;
    const workpiece = `${inch(length)}×${inch(width)} at ${inch(x)},${inch(y)}`;
    return `${step} ${purpose}: ${kind} ${workpiece} @ ${inch(at)}`;
  });
}

describe('trims', () => {
  const shop = { ...bare, endTrim: inches(1), edgeTrim: inches(1 / 4) };

  test('take both ends, then both rough edges, the kerf inside what is trimmed off', () => {
    const job = jobOf([board(40, 8, { surface: 'rough' })], [part('a', 38, 7.5)], shop);
    const layout = layOut(job, choose(job, [{ part: 0, x: 1, y: 0.25 }]));
    expect(cutLines(layout)).toEqual([
      '1 end trim: crosscut 40×8 at 0,0 @ 0.875',
      '2 end trim: crosscut 39×8 at 1,0 @ 39',
      '3 edge trim: rip 38×8 at 1,0 @ 0.125',
      '4 edge trim: rip 38×7.75 at 1,0.25 @ 7.75',
    ]);
    expect(layout.boards[0]?.area).toEqual({
      board: inches(40) * inches(8),
      parts: inches(38) * inches(7.5),
      offcuts: 0,
      kerf: 0,
      trim: inches(40) * inches(8) - inches(38) * inches(7.5),
      scrap: 0,
    });
    expect(verify(job, layout)).toEqual([]);
  });

  test('leave the near edge of S3S and both edges of S4S', () => {
    for (const [surface, edges] of [
      ['S3S', 1],
      ['S4S', 0],
    ] as const) {
      const job = jobOf([board(40, 8, { surface })], [part('a', 38, 8 - edges / 4)], shop);
      const layout = layOut(job, choose(job, [{ part: 0, x: 1, y: 0 }]));
      expect(cutLines(layout)).toHaveLength(2 + edges);
      expect(verify(job, layout)).toEqual([]);
    }
  });

  test('take the edges first where the ends would leave too little to rip', () => {
    const job = jobOf([board(13, 8, { surface: 'S2S' })], [part('a', 11, 7.5)], shop);
    const layout = layOut(job, choose(job, [{ part: 0, x: 1, y: 0.25 }]));
    expect(layout.boards[0]?.cuts.map(({ kind }) => kind)).toEqual(['rip', 'rip', 'crosscut', 'crosscut']);
    expect(verify(job, layout)).toEqual([]);
  });
});

test('a rough board too short to rip gives nothing: its edges cannot be straightened', () => {
  const shop = { ...bare, endTrim: inches(1), edgeTrim: inches(1 / 4) };
  expect(usable(board(11.5, 8, { surface: 'rough' }), shop).width).toBe(0);
  expect(usable(board(12, 8, { surface: 'rough' }), shop).width).toBe(inches(7.5));
  expect(usable(board(11.5, 8), shop).width).toBe(inches(8));
});

describe('cuts', () => {
  test('go workpiece after workpiece: all crosscuts of the board, then each section to its end', () => {
    // Two sections; the first holds two strips, one of them cut into two pieces; the rest of the board is an offcut.
    const parts = [part('long', 30, 3), part('short', 14.9375, 4), part('block', 20, 7.125)];
    const job = jobOf(
      [board(80, 7.125)],
      [{ ...(parts[0] as Part) }, { ...(parts[1] as Part), quantity: 2 }, parts[2] as Part],
    );
    const layout = layOut(
      job,
      choose(job, [
        { part: 0, x: 0, y: 0 },
        { part: 1, copy: 1, x: 0, y: 3 + kerf },
        { part: 1, copy: 2, x: 14.9375 + kerf, y: 3 + kerf },
        { part: 2, x: 30 + kerf, y: 0 },
      ]),
    );
    expect(cutLines(layout)).toEqual([
      '1 section: crosscut 80×7.125 at 0,0 @ 30',
      '2 section: crosscut 49.875×7.125 at 30.125,0 @ 50.125',
      '3 strip: rip 30×7.125 at 0,0 @ 3',
      '4 piece: crosscut 30×4 at 0,3.125 @ 14.9375',
    ]);
    const [laid] = layout.boards;
    expect(laid?.offcuts).toEqual([
      { id: 'B-a', x: inches(50.25), y: 0, length: inches(29.75), width: inches(7.125) },
    ]);
    // 3 kerfs by hand: two through the board, one along the first section, one through the upper strip.
    const square = (length: number, width: number): number => inches(length) * inches(width);
    expect(laid?.area.kerf).toBe(2 * square(kerf, 7.125) + square(30, kerf) + square(kerf, 4));
    expect(laid?.area.scrap).toBe(0);
    expect(layout.totals).toMatchObject({ boards: 1, cost: 12, boardFeet: (80 * 7.125) / 144 });
    expect(verify(job, layout)).toEqual([]);
  });

  test('keep one large offcut rather than two small ones', () => {
    // Rip first leaves 100 × 4 and 79 7/8 × 3 7/8, crosscut first 79 7/8 × 8 and 20 × 4.
    const job = jobOf([board(100, 8)], [part('a', 20, 3.875)]);
    const layout = layOut(job, choose(job, [{ part: 0, x: 0, y: 0 }]));
    expect(layout.boards[0]?.offcuts.map(({ length, width }) => [length / 8128, width / 8128])).toEqual([
      [20, 4],
      [79.875, 8],
    ]);
  });

  test('free a bevelled run with its own kerf, and a square neighbour with a square one', () => {
    const ends = { run: 'wrap', quality: 'any' as const };
    const parts = [
      part('return', 8, 5, { ...ends, rightEnd: 45 }),
      part('front', 30, 5, { ...ends, leftEnd: 45, rightEnd: 45 }),
      part('other return', 8, 5, { ...ends, leftEnd: 45 }),
      part('block', 6, 5),
    ];
    const job = jobOf([board(60, 5)], parts);
    // 1/8 in / cos 45° = 1436.8 ticks, so 1437.
    const bevel = 1437 / 8128;
    const choice = choose(job, [
      { part: 0, x: 0, y: 0, run: { run: 1, order: 0 } },
      { part: 1, x: 8 + bevel, y: 0, run: { run: 1, order: 1 } },
      { part: 2, x: 38 + 2 * bevel, y: 0, run: { run: 1, order: 2 } },
      { part: 3, x: 46 + 2 * bevel + kerf, y: 0 },
    ]);
    const layout = layOut(job, choice);
    expect(layout.boards[0]?.cuts.map(({ at, kerf: taken }) => [at, taken])).toEqual([
      [inches(46) + 2 * 1437, 1016],
      [inches(52) + 2 * 1437 + 1016, 1016],
      [inches(8), 1437],
      [inches(38) + 1437, 1437],
    ]);
    expect(verify(job, layout)).toEqual([]);
    const [miters] = setupList(layout, job).miters;
    expect(miters?.angle).toBe(45);
    expect(miters?.ends.map(({ part: name, end, isInRun }) => `${name} ${end} ${isInRun}`)).toEqual([
      'return right true',
      'front left true',
      'front right true',
      'other return left true',
    ]);
  });

  test('rip a run free of its neighbour before the blade is tilted', () => {
    const ends = { run: 'wrap', quality: 'any' as const };
    const parts = [
      part('left', 20, 5, { ...ends, rightEnd: 45 }),
      part('right', 20, 5, { ...ends, leftEnd: 45 }),
      part('beside', 20, 3, { quantity: 2 }),
    ];
    const job = jobOf([board(41, 8.125)], parts);
    const second = 20 + 1437 / 8128;
    const layout = layOut(
      job,
      choose(job, [
        { part: 0, x: 0, y: 0, run: { run: 1, order: 0 } },
        { part: 1, x: second, y: 0, run: { run: 1, order: 1 } },
        { part: 2, copy: 1, x: 0, y: 5.125 },
        { part: 2, copy: 2, x: second, y: 5.125 },
      ]),
    );
    const tilted = layout.boards[0]?.cuts.find((cut) => cut.kerf === 1437);
    expect(tilted?.region.width).toBe(inches(5));
    expect(verify(job, layout)).toEqual([]);
    // The same cut through both strips would slant through the piece beside the run.
    const [laid] = layout.boards;
    const through = {
      ...tilted,
      step: 1,
      purpose: 'section',
      region: { x: 0, y: 0, length: inches(41), width: inches(8.125) },
    };
    const spoilt = { ...layout, boards: [{ ...laid, cuts: [through] }] } as Layout;
    expect(verify(job, spoilt).map(({ kind }) => kind)).toContain('slanted through a neighbour');
  });

  test('are refused when no sequence frees the pieces', () => {
    // Four pieces round a hole, each as long as two sides: no cut from edge to edge misses them all.
    const job = jobOf(
      [board(30, 30)],
      [part('long', 20, 9, { quantity: 2 }), part('wide', 9, 20, { quantity: 2 })],
    );
    const choice = choose(job, [
      { part: 0, x: 0, y: 0 },
      { part: 1, x: 21, y: 0 },
      { part: 0, copy: 2, x: 10, y: 21 },
      { part: 1, copy: 2, x: 0, y: 10 },
    ]);
    expect(() => layOut(job, choice)).toThrow('no legal cuts');
  });
});

describe('setups', () => {
  test('count each fence and stop position once over all boards', () => {
    // Two boards, each one strip 3 in wide off 8, crosscut to 20 and 30: one fence position, two stops.
    const parts = [part('a', 20, 3, { quantity: 2 }), part('b', 30, 3, { quantity: 2 })];
    const job = jobOf([board(60, 8, { quantity: 2 })], parts);
    const strip = (copy: number): Laid[] => [
      { part: 0, copy, x: 0, y: 0 },
      { part: 1, copy, x: 20 + kerf, y: 0 },
    ];
    const base = choose(job, strip(1));
    const twice = {
      ...base,
      patterns: [1, 2].map((copy) => ({
        board: 0,
        copy,
        pieces: (choose(job, strip(copy)).patterns[0] as BoardPattern).pieces,
      })),
    };
    const layout = layOut(job, twice);
    expect(verify(job, layout)).toEqual([]);
    const list = setupList(layout, job);
    expect(list.rips.map(({ position, cuts }) => [position / 8128, cuts.length])).toEqual([[3, 2]]);
    expect(list.crosscuts.map(({ cuts }) => cuts.map(({ copy }) => copy))).toEqual(
      list.crosscuts.map(() => [1, 2]),
    );
    expect(layout.totals.setups).toBe(list.rips.length + list.crosscuts.length);
    expect(layout.totals.setups).toBe(3);
    expect(layout.boards.map(({ offcuts }) => offcuts.map(({ id }) => id))).toEqual([['B-1a'], ['B-2a']]);
  });
});

describe('the proof', () => {
  const parts = [part('a', 50, 8)];
  const shop = { ...bare, offcutCredit: 0.5 };

  test('takes off what kept offcuts earn', () => {
    const job = jobOf([board(100, 8)], parts, shop);
    const choice = choose(job, [{ part: 0, x: 0, y: 0 }]);
    const layout = layOut(job, { ...choice, proof: { value: 12, bound: 9, gap: 0.25, proven: false } });
    // The offcut is 49 7/8 of 100 in: half of that share of $12 comes back.
    const value = 12 - 0.5 * (49.875 / 100) * 12;
    expect(layout.proof.value).toBeCloseTo(value, 9);
    expect(layout.proof.gap).toBeCloseTo((value - 9) / value, 9);
    expect(verify(job, layout)).toEqual([]);
  });

  test('has no gap where the value meets the bound, to rounding', () => {
    const job = jobOf([board(100, 8)], parts);
    const proof = { value: 12, bound: 12, gap: 0, proven: true };
    for (const bound of [12, 12 + 1e-9, 12 - 1e-9]) {
      const layout = layOut(job, { ...choose(job, [{ part: 0, x: 0, y: 0 }]), proof: { ...proof, bound } });
      expect(layout.proof).toEqual(proof);
      expect(verify(job, layout)).toEqual([]);
    }
    const near = layOut(job, {
      ...choose(job, [{ part: 0, x: 0, y: 0 }]),
      proof: { ...proof, bound: 11.99 },
    });
    expect(near.proof.proven).toBe(false);
    expect(verify(job, near)).toEqual([]);
  });

  test('counts a glued-up copy once under the goal of most value', () => {
    const strips = plainPart({ name: 'top', length: inches(30), width: inches(5.75) });
    const job = jobOf([board(60, 8)], [{ ...strips, glueUp: 2, value: 7 }], {
      ...bare,
      goal: 'most value',
      gluedLengthAllowance: ticks(0),
      gluedWidthAllowance: ticks(0),
    });
    const blank = { length: inches(30), width: inches(3), part: 0, copy: 1, showFace: null };
    const pieces = [
      { ...blank, x: 0, y: 0, strip: { index: 0, of: 2 } },
      { ...blank, x: 0, y: ticks(inches(3) + 1016), strip: { index: 1, of: 2 } },
    ];
    const layout = layOut(job, {
      patterns: [{ board: 0, copy: 1, pieces }],
      short: [],
      proof: { value: 7, bound: 7, gap: 0, proven: true },
    });
    expect(layout.proof.value).toBe(7);
    expect(verify(job, layout)).toEqual([]);
  });
});
