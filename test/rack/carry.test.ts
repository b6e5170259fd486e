import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Rectangle } from '../../src/base/geometry/rectangle.ts';
import { inches, ticks } from '../../src/base/units/tick.ts';
import { carryDefects } from '../../src/flow/rack/carry.ts';
import { knotsBeside } from '../../src/flow/rack/knots-beside.ts';
import { offcutPiece } from '../../src/flow/rack/offcut-piece.ts';
import { asBoard, turnPiece } from '../../src/flow/rack/piece.ts';
import { compose, swapsFaces, turnDefect, turns, type Turn } from '../../src/flow/rack/turn.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import { extent } from '../../src/flow/stock/clear.ts';
import type { Defect, Face } from '../../src/flow/stock/defect.ts';
import { plainBoard } from '../laws/random-board.ts';
import { anyDefect } from './arbitraries.ts';

// Boards of a few ticks, so that every square tick of every face can be asked.
const boardLength = 14;
const boardWidth = 7;

const anyRegion = fc
  .record({
    x: fc.integer({ min: 0, max: boardLength - 1 }),
    y: fc.integer({ min: 0, max: boardWidth - 1 }),
    length: fc.integer({ min: 1, max: boardLength }),
    width: fc.integer({ min: 1, max: boardWidth }),
  })
  .map((region) => ({
    ...region,
    length: Math.min(region.length, boardLength - region.x),
    width: Math.min(region.width, boardWidth - region.y),
  }));
const anyTurn = fc.constantFrom(...turns);
const anyDefects = fc.array(anyDefect(boardLength, boardWidth), { maxLength: 5 });

/**
 * Turns done by hand with a paper strip, as matrices about the middle of the piece in three dimensions: x along, y
 * across, z out of face A. End for end is half a turn about z, rolling over half a turn about x, both half a turn
 * about y. Written apart from the code under test.
 */
const halfTurns: Readonly<Record<Turn, readonly [x: 1 | -1, y: 1 | -1, z: 1 | -1]>> = {
  'as cut': [1, 1, 1],
  'end for end': [-1, -1, 1],
  over: [1, -1, -1],
  both: [-1, 1, -1],
};

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly face: Face;
}

/** Where the middle of a square tick of the parent is on the offcut. */
function mapSpot(spot: Spot, region: Rectangle, turn: Turn): Spot {
  const [sx, sy, sz] = halfTurns[turn];
  const fromMiddleX = spot.x + 0.5 - region.x - region.length / 2;
  const fromMiddleY = spot.y + 0.5 - region.y - region.width / 2;
  const out = (spot.face === 'A' ? 1 : -1) * sz;
  return {
    x: sx * fromMiddleX + region.length / 2 - 0.5,
    y: sy * fromMiddleY + region.width / 2 - 0.5,
    face: out === 1 ? 'A' : 'B',
  };
}

function kindsAt(defects: readonly Defect[], { x, y, face }: Spot): string {
  return defects
    .filter((one) => one.face === face || one.face === 'through')
    .filter((one) => x >= one.x && x < one.x + one.length && y >= one.y && y < one.y + one.width)
    .map(({ kind }) => kind)
    .join();
}

function spotsOf(region: Rectangle): Spot[] {
  const spots: Spot[] = [];
  for (let x = region.x; x < region.x + region.length; x += 1)
    for (let y = region.y; y < region.y + region.width; y += 1)
      for (const face of ['A', 'B'] as const) spots.push({ x, y, face });
  return spots;
}

describe('defects carried from the parent to the offcut', () => {
  it('a point is a defect on the offcut exactly where it is one on the parent, over all turns', () => {
    fc.assert(
      fc.property(anyDefects, anyRegion, anyTurn, (defects, region, turn) => {
        const carried = carryDefects(Object.freeze(defects), region, turn);
        for (const spot of spotsOf(region))
          expect(kindsAt(carried, mapSpot(spot, region, turn))).toBe(kindsAt(defects, spot));
      }),
      { numRuns: 400 },
    );
  });

  it('and on an offcut of an offcut, each turned its own way', () => {
    fc.assert(
      fc.property(
        anyDefects,
        anyRegion,
        anyTurn,
        anyRegion,
        anyTurn,
        (defects, first, turn, inner, again) => {
          const length = Math.min(inner.length, first.length);
          const width = Math.min(inner.width, first.width);
          const second = {
            x: Math.min(inner.x, first.length - length),
            y: Math.min(inner.y, first.width - width),
            length,
            width,
          };
          const once = carryDefects(defects, first, turn);
          const twice = carryDefects(once, second, again);
          for (const spot of spotsOf(first)) {
            const onFirst = mapSpot(spot, first, turn);
            const inside =
              onFirst.x >= second.x &&
              onFirst.x < second.x + length &&
              onFirst.y >= second.y &&
              onFirst.y < second.y + width;
            if (inside) expect(kindsAt(twice, mapSpot(onFirst, second, again))).toBe(kindsAt(defects, spot));
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it('lie within the offcut', () => {
    fc.assert(
      fc.property(anyDefects, anyRegion, anyTurn, (defects, region, turn) => {
        for (const { x, y, length, width } of carryDefects(defects, region, turn)) {
          expect(Math.min(x, y, length - 1, width - 1)).toBeGreaterThanOrEqual(0);
          expect(x + length).toBeLessThanOrEqual(region.length);
          expect(y + width).toBeLessThanOrEqual(region.width);
        }
      }),
    );
  });

  it('worked by hand: a knot on face B near the butt end, the piece rolled over', () => {
    const knot: Defect = { kind: 'sound knot', face: 'B', x: 10, y: 1, length: 4, width: 2 };
    const region = { x: 8, y: 0, length: 20, width: 6 };
    expect(carryDefects([knot], region, 'as cut')).toEqual([{ ...knot, x: 2 }]);
    // Rolled over: face B is now face A; 1…3 from the near edge of six becomes 3…5.
    expect(carryDefects([knot], region, 'over')).toEqual([{ ...knot, face: 'A', x: 2, y: 3 }]);
    // End for end: 2…6 from the butt end of twenty becomes 14…18.
    expect(carryDefects([knot], region, 'end for end')).toEqual([{ ...knot, x: 14, y: 3 }]);
    expect(carryDefects([knot], region, 'both')).toEqual([{ ...knot, face: 'A', x: 14, y: 1 }]);
  });

  it('a defect that only touches the cut stays with the neighbour', () => {
    const knot: Defect = { kind: 'hole', face: 'through', x: 0, y: 0, length: 8, width: 3 };
    expect(carryDefects([knot], { x: 8, y: 0, length: 4, width: 3 }, 'as cut')).toEqual([]);
  });
});

describe('the wood round knots', () => {
  const shop = { ...defaultShop, knotMargin: ticks(2) };
  /** Square ticks of a face that are to be kept clear. */
  const kept = (defects: readonly Defect[], { x, y, face }: Spot): boolean =>
    defects.some((defect) => {
      if (defect.face !== face && defect.face !== 'through') return false;
      const wood = extent(defect, shop);
      return x >= wood.x && x < wood.x + wood.length && y >= wood.y && y < wood.y + wood.width;
    });

  it('is avoided on the offcut, and on an offcut of it, exactly where it was on the parent', () => {
    const board = plainBoard({ name: 'P', length: ticks(boardLength), width: ticks(boardWidth) });
    const like = { thickness: board.dressedThickness, knotMargin: shop.knotMargin };
    fc.assert(
      fc.property(anyDefects, anyRegion, anyTurn, anyRegion, (defects, region, turn, inner) => {
        const piece = turnPiece(offcutPiece('X', region, { ...board, defects }, like), turn);
        const onOffcut = asBoard(piece, '').defects;
        for (const spot of spotsOf(region))
          expect(kept(onOffcut, mapSpot(spot, region, turn))).toBe(kept(defects, spot));
        const second = {
          ...inner,
          x: inner.x % piece.length,
          y: inner.y % piece.width,
          length: Math.min(inner.length, piece.length - (inner.x % piece.length)),
          width: Math.min(inner.width, piece.width - (inner.y % piece.width)),
        };
        const again = asBoard(offcutPiece('Y', second, asBoard(piece, ''), like), '').defects;
        for (const spot of spotsOf(second))
          expect(kept(again, mapSpot(spot, second, 'as cut'))).toBe(kept(onOffcut, spot));
      }),
      { numRuns: 300 },
    );
  });

  it('farther off it does not count', () => {
    const knot: Defect = { kind: 'sound knot', face: 'A', x: 0, y: 0, length: 3, width: 3 };
    expect(knotsBeside([knot], { x: 5, y: 0, length: 5, width: 5 }, ticks(2))).toEqual([]);
    expect(knotsBeside([knot], { x: 5, y: 0, length: 5, width: 5 }, ticks(3))).toEqual([{ ...knot, x: -5 }]);
  });
});

describe('turns', () => {
  it('undo themselves, and one after another are the turn that compose names', () => {
    fc.assert(
      fc.property(anyDefect(boardLength, boardWidth), anyTurn, anyTurn, (defect, first, second) => {
        const piece = { length: boardLength, width: boardWidth };
        const twice = turnDefect(turnDefect(defect, piece, first), piece, second);
        expect(twice).toEqual(turnDefect(defect, piece, compose(first, second)));
        expect(compose(first, first)).toBe('as cut');
        expect(compose(first, second)).toBe(compose(second, first));
      }),
    );
  });

  it('swap looks with the faces, and keep the way back to the parent', () => {
    const parent = plainBoard({
      name: 'P',
      length: inches(60),
      width: inches(8),
      lookA: 9,
      lookB: 2,
      defects: [{ kind: 'check', face: 'A', x: 0, y: 0, length: inches(6), width: inches(1) }],
    });
    const piece = offcutPiece(
      'C234X',
      { x: inches(2), y: inches(1), length: inches(20), width: inches(5) },
      parent,
      { thickness: parent.dressedThickness, knotMargin: ticks(0) },
    );
    for (const turn of turns) {
      const turned = turnPiece(piece, turn);
      expect([turned.lookA, turned.lookB]).toEqual(swapsFaces(turn) ? [2, 9] : [9, 2]);
      expect(turned.parent).toEqual({ ...piece.parent, turn });
      expect(turnPiece(turned, turn)).toEqual(piece);
      expect(asBoard(turned, 'n')).toMatchObject({
        origin: 'rack',
        name: 'C234X',
        quantity: 1,
        defects: turned.defects,
      });
    }
  });
});
