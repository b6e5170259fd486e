import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Board,
  type Defect,
  type Part,
  type PartRow,
  type Shop,
  type Surface,
  type Tick,
  defaultShop,
  defectKinds,
  inches,
  parseThickness,
  surfaceMeasures,
  ticks,
  yardFeet,
} from '../../../src/index.ts';
import { readJobTexts } from '../../../src/shell/read/job-texts.ts';
import { writeBoardsCsv } from '../../../src/shell/write/boards-csv.ts';
import { writeDefectsCsv } from '../../../src/shell/write/defects-csv.ts';
import { writePartsCsv } from '../../../src/shell/write/parts-csv.ts';

const size = (least: number, most: number = inches(200)): fc.Arbitrary<Tick> =>
  fc
    .oneof(
      fc.integer({ min: least, max: most }),
      fc
        .integer({ min: Math.ceil(least / 127), max: Math.floor(most / 127) })
        .map((sixtyFourths) => sixtyFourths * 127),
      fc.integer({ min: Math.ceil(least / 32), max: Math.floor(most / 32) }).map((tenths) => tenths * 32),
    )
    .map(ticks);

const note = fc
  .oneof(
    fc.string({ unit: 'grapheme', maxLength: 12 }),
    fc.string({ unit: fc.constantFrom(...'\'"=+-@;,\t\r\n :ABab1'), maxLength: 8 }),
    fc.constantFrom('__proto__', '=1+1', "'=1", '<script>', '../x', '-22.5', 'yes', '4/4'),
  )
  .map((text) => text.trim());
const name = note.filter((text) => text !== '');
// One pin cannot be told apart in this format: face A of board X beside a board named X:A.
const boardName = name.filter((text) => !/:\s*[ab]$/i.test(text));
const money = fc.double({ min: 0, max: 1e9, noNaN: true }).map((value) => value + 0);
const degrees = fc
  .oneof(fc.constantFrom(0, 45, -45, 22.5, -22.5), fc.double({ min: -89.9, max: 89.9, noNaN: true }))
  .map((value) => value + 0);

function partOn(boards: readonly string[]): fc.Arbitrary<Part> {
  const pin = fc.record({
    board: boards.length === 0 ? fc.constant('') : fc.constantFrom(...boards),
    face: fc.constantFrom('A' as const, 'B' as const, null),
  });
  const given = fc.record({
    name,
    quantity: fc.nat(1000),
    length: size(1),
    width: size(1),
    thickness: size(1, inches(24)),
    species: note,
    grain: fc.constantFrom('along', 'across', 'any'),
    quality: fc.constantFrom('clear-2', 'clear-1', 'sound', 'any'),
    show: fc.oneof(fc.constantFrom(0, 1, 2), money),
    accept: fc.array(
      fc.record({ kind: fc.constantFrom(...defectKinds), atMost: fc.option(size(0), { nil: null }) }),
      { maxLength: 3 },
    ),
    run: fc.option(name, { nil: null }),
    leftEnd: degrees,
    rightEnd: degrees,
    glueUp: fc.integer({ min: 1, max: 100 }),
    value: fc.option(money, { nil: null }),
    pin: boards.length === 0 ? fc.constant(null) : fc.option(pin, { nil: null }),
    note,
  });
  const extra = fc.record({ extraLength: size(0), extraWidth: size(0) }, { requiredKeys: [] });
  return fc.tuple(given, extra).map(([own, more]) => ({ ...own, ...more }));
}

/** A row, perhaps planned: with a record of what the plan wrote, which pins nothing. */
function rowOn(boards: readonly string[]): fc.Arbitrary<PartRow> {
  const planned = partOn([]).map((part) => ({ ...part, pin: null }));
  return fc
    .tuple(partOn(boards), fc.option(planned, { nil: null }))
    .map(([part, record]) => ({ part, planned: record === null ? null : { ...record, name: part.name } }));
}

function defectOn(length: Tick, width: Tick): fc.Arbitrary<Defect> {
  const span = (whole: Tick): fc.Arbitrary<[number, number]> =>
    fc
      .uniqueArray(fc.integer({ min: 0, max: whole }), { minLength: 2, maxLength: 2 })
      .map(([a = 0, b = 0]) => [Math.min(a, b), Math.abs(b - a)]);
  return fc
    .tuple(fc.constantFrom(...defectKinds), fc.constantFrom('A', 'B', 'through'), span(length), span(width))
    .map(([kind, face, [x, along], [y, across]]) => ({ kind, face, x, y, length: along, width: across }));
}

// Larger and smaller ones are questioned.
const outline = fc.record({ length: size(inches(16)), width: size(inches(1), inches(72)) });
const board: fc.Arbitrary<Board> = outline.chain(({ length, width }) =>
  fc
    .record({
      name: boardName,
      quantity: fc.integer({ min: 1, max: 100 }),
      nominalThickness: fc.constantFrom('4/4', '8/4', '13/16 in', '1 1/16"', '20 mm', '26.5 mm'),
      surface: fc.constantFrom<Surface>('rough', 'S2S', 'S3S', 'S4S'),
      species: note,
      grade: note,
      cost: fc.nat(1e9).map((cents) => cents / 100),
      lookA: fc.double({ min: 0, max: 10, noNaN: true }).map((value) => value + 0),
      lookB: fc.constantFrom(0, 5, 10),
      tone: note,
      note,
      defects: fc.array(defectOn(length, width), { maxLength: 3 }),
    })
    .map((given) => {
      const thickness = parseThickness(given.nominalThickness, given.surface);
      if (thickness === null) throw new Error(given.nominalThickness);
      return {
        ...given,
        length,
        width,
        nominalInches: thickness.nominalInches,
        yardFeet: 0,
        dressedThickness: thickness.dressed,
        origin: 'job' as const,
      };
    }),
);

const uniqueNames = { selector: ({ name: own }: { readonly name: string }): string => own, maxLength: 4 };
/** Boards as a file of them is tallied. */
function tallied(boards: readonly Board[]): Board[] {
  const measures = surfaceMeasures(boards.flatMap((one) => Array.from({ length: one.quantity }, () => one)));
  return boards.map((one, at) => {
    const from = boards.slice(0, at).reduce((sum, { quantity }) => sum + quantity, 0);
    const own = measures.slice(from, from + one.quantity);
    return { ...one, yardFeet: yardFeet(one.length, one.width, one.nominalInches, own) };
  });
}

const job = fc
  .uniqueArray(board, uniqueNames)
  .map(tallied)
  .chain((boards) =>
    fc.record({
      boards: fc.constant(boards),
      rows: fc.uniqueArray(rowOn(boards.map(({ name: own }) => own)), {
        ...uniqueNames,
        selector: ({ part }) => part.name,
      }),
      units: fc.constantFrom('in' as const, 'mm' as const),
    }),
  );

describe('read(write(x)) = x', () => {
  it('for parts, boards and defects', () => {
    fc.assert(
      fc.property(job, ({ boards, rows, units }) => {
        const shop: Shop = { ...defaultShop, units };
        const texts = {
          shop: { file: 'shop.csv', text: `setting,value\nunits,${units}\n` },
          parts: { file: 'parts.csv', text: writePartsCsv(rows, shop) },
          boards: { file: 'boards.csv', text: writeBoardsCsv(boards, shop) },
          defects: { file: 'defects.csv', text: writeDefectsCsv(boards, shop) },
          yard: { file: 'yard.csv', text: null },
        };
        const read = readJobTexts('x', texts);
        expect(read.problems).toEqual([]);
        expect(read.value.partRows).toEqual(rows);
        expect(read.value.parts).toEqual(rows.map(({ part }) => part));
        expect(read.value.boards).toEqual(boards);
      }),
      { numRuns: 120 },
    );
  });
});

describe('what stands in the files', () => {
  it('is what a person would write', () => {
    const text = writePartsCsv(
      [
        {
          part: {
            name: '=Front',
            quantity: 2,
            length: inches(60.5),
            width: inches(6),
            thickness: inches(0.75),
            species: 'white ash',
            grain: 'along',
            quality: 'clear-1',
            show: 1,
            accept: [
              { kind: 'sound knot', atMost: inches(0.5) },
              { kind: 'stain', atMost: null },
            ],
            run: 'wrap',
            leftEnd: 45,
            rightEnd: -22.5,
            glueUp: 1,
            value: null,
            pin: { board: 'B3', face: 'A' },
            note: 'over the fire, seen by all',
          },
          planned: null,
        },
      ],
      defaultShop,
    );
    expect(text).toBe(
      'part,quantity,length,width,thickness,species,grain,quality,show,accept,run,left end,right end,extra length,extra width,glue-up,value,board,note,planned\n' +
        '\'=Front,2,60 1/2,6,3/4 in,white ash,,clear-1,yes,"sound knot <= 1/2 in; stain",wrap,45,-22.5,,,,,B3:A,"over the fire, seen by all",\n',
    );
  });
});
