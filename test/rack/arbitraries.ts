import fc from 'fast-check';
import { inches, ticks } from '../../src/base/units/tick.ts';
import type { Deed, Entry } from '../../src/flow/rack/entry.ts';
import type { RackPiece } from '../../src/flow/rack/piece.ts';
import { turns } from '../../src/flow/rack/turn.ts';
import { defectKinds, type Defect } from '../../src/flow/stock/defect.ts';

/** Names as hostile as a file can hold: quotes, formulas, line ends, other scripts, signs of every dialect. */
export const anyName = fc.oneof(
  fc.constantFrom(
    '__proto__',
    '=1+1',
    '<b>',
    '007',
    '3/4',
    "'quoted",
    'a;b,c\td',
    'two\nlines',
    '"',
    '\\n',
    'é😀',
    ' x ',
  ),
  fc.string({ minLength: 1, maxLength: 12 }).filter((text) => text.trim() !== ''),
);

const word = fc.constantFrom('', 'white oak', 'walnut', 'brown', '=x', 'a;b', 'two "fold"');

/** A defect within a piece of that size. */
export function anyDefect(length: number, width: number): fc.Arbitrary<Defect> {
  return fc
    .record({
      kind: fc.constantFrom(...defectKinds),
      face: fc.constantFrom('A', 'B', 'through'),
      x: fc.integer({ min: 0, max: length - 1 }),
      y: fc.integer({ min: 0, max: width - 1 }),
      along: fc.integer({ min: 1, max: length }),
      across: fc.integer({ min: 1, max: width }),
    })
    .map(({ along, across, ...rest }) => ({
      ...rest,
      face: rest.face as Defect['face'],
      length: Math.min(along, length - rest.x),
      width: Math.min(across, width - rest.y),
    }));
}

/** A knot off a piece of that size, past any of its ends and edges. */
function anyKnotBeside(length: number, width: number): fc.Arbitrary<Defect> {
  return fc
    .record({
      kind: fc.constantFrom('sound knot', 'loose knot'),
      face: fc.constantFrom('A', 'B', 'through'),
      side: fc.constantFrom('butt', 'tip', 'near', 'far'),
      off: fc.integer({ min: 0, max: 2000 }),
      size: fc.integer({ min: 1, max: 9000 }),
    })
    .map(({ kind, face, side, off, size }) => ({
      kind: kind as Defect['kind'],
      face: face as Defect['face'],
      x: side === 'butt' ? -size - off : side === 'tip' ? length + off : 0,
      y: side === 'near' ? -size - off : side === 'far' ? width + off : 0,
      length: size,
      width: size,
    }));
}

const anySize = fc.oneof(
  fc.integer({ min: 1, max: 2_000_000 }),
  fc.integer({ min: 1, max: 4000 }).map((sixtyFourths) => sixtyFourths * 127),
  fc.integer({ min: 1, max: 20_000 }).map((tenths) => tenths * 32),
);

export const anyPiece: fc.Arbitrary<RackPiece> = fc
  .record({ length: anySize, width: anySize })
  .chain(({ length, width }) =>
    fc.record({
      name: anyName,
      length: fc.constant(ticks(length)),
      width: fc.constant(ticks(width)),
      dressedThickness: fc.constantFrom(inches(13 / 16), ticks(6080), ticks(6081)),
      nominalThickness: fc.constantFrom('4/4', '20 mm', '13/16'),
      nominalInches: fc.constantFrom(1, 1.25, 20 / 25.4),
      species: word,
      grade: word,
      tone: word,
      lookA: fc.integer({ min: 0, max: 10 }),
      lookB: fc.integer({ min: 0, max: 10 }),
      cost: fc.integer({ min: 0, max: 1_000_000 }).map((part) => part / 10_000),
      defects: fc.array(anyDefect(length, width), { maxLength: 4 }),
      beside: fc.array(anyKnotBeside(length, width), { maxLength: 2 }),
      parent: fc.option(
        fc.record({
          name: anyName,
          x: anySize.map(ticks),
          y: anySize.map(ticks),
          turn: fc.constantFrom(...turns),
        }),
      ),
    }),
  );

const anyDeed: fc.Arbitrary<Deed> = fc.oneof(
  anyPiece.map((piece): Deed => ({ action: 'put', piece })),
  anyPiece.map((piece): Deed => ({ action: 'correct', piece })),
  anyPiece.map((piece): Deed => ({ action: 'discard', name: piece.name, piece })),
  fc.integer({ min: 1, max: 99 }).map((undoes): Deed => ({ action: 'undo', undoes })),
  fc
    .record({
      piece: anyPiece,
      from: fc.constantFrom('rack', 'job'),
      made: fc.array(
        fc.record({
          count: fc.integer({ min: 1, max: 40 }),
          length: anySize.map(ticks),
          width: anySize.map(ticks),
          thickness: anySize.map(ticks),
        }),
        { maxLength: 3 },
      ),
    })
    .map(({ piece, from, made }): Deed => ({
      action: 'take',
      from: from as 'rack' | 'job',
      name: piece.name,
      piece,
      made,
    })),
);

/** Bookings of one to four entries each, as drafts. */
export const anyDrafts = fc.array(
  fc.record({
    occasion: fc.record({
      time: fc.constant('2031-05-06T07:08:09Z'),
      job: anyName,
      layout: fc.constantFrom('', 'CDF234'),
    }),
    deeds: fc.array(fc.record({ deed: anyDeed, note: fc.oneof(fc.constant(''), anyName) }), {
      minLength: 1,
      maxLength: 4,
    }),
  }),
  { minLength: 1, maxLength: 5 },
);

/** What an entry says, without where it stands. */
export function plainEntry({ occasion, deed, note }: Entry): unknown {
  return { occasion, deed, note };
}
