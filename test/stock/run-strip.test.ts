import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inches, ticks } from '../../src/base/units/tick.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import { blocks } from '../../src/flow/stock/clear.ts';
import type { Defect } from '../../src/flow/stock/defect.ts';
import { holdsRun, runStrip } from '../../src/flow/stock/run-strip.ts';
import { usable } from '../../src/flow/stock/usable.ts';
import { boardOf, partOf } from '../sheet/stock-of.ts';

const facing = (name: string, length: number, more: Partial<Part> = {}): Part =>
  partOf(name, 1, inches(length), inches(6), { run: 'facing', ...more });

/** Left return, front, right return, mitered where they meet. */
const run = [
  facing('left', 10, { rightEnd: 45 }),
  facing('front', 40, { leftEnd: 45, rightEnd: 45 }),
  facing('right', 10, { leftEnd: 45 }),
];

describe('the strip of a run', () => {
  it('takes every length, and a kerf along the face of each 45 degree cut', () => {
    // 1/8 in / cos 45 = 1436.8 ticks, rounded up.
    expect(runStrip(run, defaultShop)).toEqual({ length: 60 * 8128 + 2 * 1437, width: 6 * 8128 });
  });

  it('of one part is its blank', () => {
    const shop = { ...defaultShop, lengthAllowance: inches(1), widthAllowance: inches(1 / 4) };
    expect(runStrip(run.slice(1, 2), shop)).toEqual({ length: 41 * 8128, width: 6.25 * 8128 });
  });
});

describe('a board holds a run', () => {
  // Usable: 2 in less than its length, 1/2 in less than its width.
  const length = inches(62.5);
  const width = inches(6.5);
  const flaw = (x: number, y: number, more: Partial<Defect> = {}): Defect => ({
    kind: 'sound knot',
    face: 'through',
    x: inches(x),
    y: inches(y),
    length: inches(1),
    width: inches(1),
    ...more,
  });
  const holds = (board: Partial<Board>): boolean =>
    holdsRun(run, boardOf('B', length, width, board), defaultShop);

  it.each<[string, boolean, Partial<Board>]>([
    ['just long and wide enough', true, {}],
    ['too short', false, { length: inches(62.25) }],
    ['too narrow', false, { width: ticks(width - 1) }],
    ['too thin', false, { dressedThickness: inches(1 / 2) }],
    ['with a knot through the middle', false, { defects: [flaw(30, 3)] }],
    ['with a knot on one face', true, { defects: [flaw(30, 3, { face: 'A' })] }],
    [
      'with a sound knot on each face',
      false,
      { defects: [flaw(30, 3, { face: 'A' }), flaw(9, 3, { face: 'B' })] },
    ],
    ['with a knot beside it, on a wider board', true, { width: inches(7.5), defects: [flaw(30, 0.25)] }],
    [
      'with a hole on the back',
      false,
      { defects: [flaw(30, 3, { face: 'A' }), flaw(9, 3, { face: 'B', kind: 'hole' })] },
    ],
    ['with a knot in the end trim', true, { defects: [flaw(0, 3)] }],
    ['with a knot inside, another in the end trim', false, { defects: [flaw(1, 3), flaw(62, 3)] }],
  ])('%s: %s', (_name, expected, board) => {
    expect(holds(board)).toBe(expected);
  });

  it('exactly where trying every place finds room', () => {
    const small = [facing('a', 6, { width: inches(3) })];
    const inch = (most: number): fc.Arbitrary<number> => fc.integer({ min: 0, max: most });
    const anyFlaw = fc
      .record({
        x: inch(14),
        y: inch(7),
        length: fc.integer({ min: 1, max: 5 }),
        width: fc.integer({ min: 1, max: 3 }),
      })
      .map(({ x, y, length: l, width: w }) => flaw(x, y, { length: inches(l), width: inches(w) }));
    fc.assert(
      fc.property(fc.array(anyFlaw, { maxLength: 6 }), (defects) => {
        const board = boardOf('B', inches(14), inches(8), { defects });
        const area = usable(board, defaultShop);
        const steps = (most: number): number[] =>
          Array.from({ length: Math.floor((most / 8128) * 4) + 1 }, (_, step) => (step * 8128) / 4);
        const found = steps(area.length - 6 * 8128).some((x) =>
          steps(area.width - 3 * 8128).some((y) =>
            defects.every(
              (d) =>
                !blocks(small[0] as Part, d, 'A') ||
                d.x >= area.x + x + 6 * 8128 ||
                d.x + d.length <= area.x + x ||
                d.y >= area.y + y + 3 * 8128 ||
                d.y + d.width <= area.y + y,
            ),
          ),
        );
        expect(holdsRun(small, board, defaultShop)).toBe(found);
      }),
      { numRuns: 300 },
    );
  });
});
