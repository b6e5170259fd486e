import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultShop } from '../../../src/index.ts';
import { printProblems } from '../../../src/shell/print-problem.ts';
import { boardColumns } from '../../../src/shell/read/boards.ts';
import { defectColumns } from '../../../src/shell/read/defects.ts';
import { type JobText, readJobTexts } from '../../../src/shell/read/job-texts.ts';
import { legColumns, mantelSettings, readLegs, readMantelSettings } from '../../../src/shell/read/mantel.ts';
import { partColumns } from '../../../src/shell/read/parts.ts';
import type { ReadProblem } from '../../../src/shell/read/problem.ts';
import { shopSettings } from '../../../src/shell/read/shop-settings.ts';
import { decoded } from '../../../src/shell/read/text-file.ts';

const cell = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 10 }),
  fc.string({ unit: fc.constantFrom(...'0123456789/.,-+ \'"in½:<=;AB'), maxLength: 8 }),
  fc.constantFrom(
    ...[
      '',
      '1',
      '0',
      '-1',
      '6',
      '60 1/2',
      '3/4',
      '4/4',
      'B1',
      'B1:A',
      'rot',
      'A',
      'through',
      'yes',
      'any',
      '1e308',
    ],
    ...[
      'NaN',
      'Infinity',
      '__proto__',
      'constructor',
      '=1+1',
      '9'.repeat(400),
      'sound knot <= 1/2',
      'mm',
      '45',
      '1/0',
    ],
  ),
);
const separator = fc.constantFrom(',', ';', '\t');

/** A file with the right header and any cells, or any text at all. */
function sheetOf(columns: readonly { readonly name: string }[]): fc.Arbitrary<string> {
  const names = columns.map(({ name }) => name);
  const row = fc.array(cell, { minLength: names.length, maxLength: names.length });
  const rows = fc
    .tuple(separator, fc.array(row, { maxLength: 4 }))
    .map(([sign, cells]) =>
      [names, ...cells]
        .map((texts) => texts.map((text) => `"${text.replaceAll('"', '""')}"`).join(sign))
        .join('\n'),
    );
  return fc.oneof({ weight: 3, arbitrary: rows }, fc.string({ unit: 'binary', maxLength: 80 }));
}

function settingsOf(settings: readonly { readonly name: string }[]): fc.Arbitrary<string> {
  const row = fc.tuple(fc.constantFrom(...settings.map(({ name }) => name)), cell);
  return fc
    .array(row, { maxLength: 6 })
    .map((rows) =>
      ['setting,value', ...rows.map(([name, text]) => `${name},"${text.replaceAll('"', '""')}"`)].join('\n'),
    );
}

const bytes = fc.uint8Array({ maxLength: 120 });

/** Bytes as the file reader takes them: a text, or a problem and no text. */
function textOf(file: string, raw: Uint8Array): { text: JobText; problems: readonly ReadProblem[] } {
  const text = decoded(raw, file);
  return text.ok
    ? { text: { file, text: text.value }, problems: [] }
    : { text: { file, text: null }, problems: text.problems };
}

function expectSaid(problems: readonly ReadProblem[]): void {
  const said = printProblems(problems);
  // Tabs and line ends are all that may be left of the control signs.
  expect(said.replaceAll('\n', '')).not.toMatch(/\p{Control}/u);
  expect(said.match(/^ {2}mend: \S/gm) ?? []).toHaveLength(problems.length);
}

describe('no file can make a reader throw', () => {
  it('the files of a job', () => {
    const files = fc.record({
      shop: settingsOf(shopSettings),
      parts: sheetOf(partColumns),
      boards: sheetOf(boardColumns),
      defects: sheetOf(defectColumns),
      yard: fc.option(sheetOf(boardColumns), { nil: null }),
    });
    fc.assert(
      fc.property(files, (texts) => {
        const named = (file: keyof typeof texts): JobText => ({ file: `${file}.csv`, text: texts[file] });
        const { value, problems } = readJobTexts('x', {
          shop: named('shop'),
          parts: named('parts'),
          boards: named('boards'),
          defects: named('defects'),
          yard: named('yard'),
        });
        if (problems.length > 0) return expectSaid(problems);
        for (const { length, width, defects } of value.boards) {
          expect(Math.min(length, width)).toBeGreaterThan(0);
          for (const defect of defects) {
            expect(Math.min(defect.x, defect.y)).toBeGreaterThanOrEqual(0);
            expect(defect.x + defect.length).toBeLessThanOrEqual(length);
            expect(defect.y + defect.width).toBeLessThanOrEqual(width);
            expect(Math.min(defect.length, defect.width)).toBeGreaterThan(0);
          }
        }
        for (const part of value.parts) {
          expect(Math.min(part.length, part.width, part.thickness)).toBeGreaterThan(0);
          expect(Number.isInteger(part.quantity)).toBe(true);
        }
      }),
      { numRuns: 120 },
    );
  });

  it('the files of a mantel', () => {
    fc.assert(
      fc.property(settingsOf(mantelSettings), sheetOf(legColumns), (settings, legs) => {
        const mantel = readMantelSettings('mantel.csv', settings, defaultShop);
        expect(mantel.value === null).toBe(mantel.value === null && mantel.problems.length > 0);
        expectSaid([...mantel.problems, ...readLegs('legs.csv', legs, defaultShop).problems]);
      }),
      { numRuns: 100 },
    );
  });

  it('any bytes', () => {
    fc.assert(
      fc.property(bytes, bytes, bytes, bytes, (shop, parts, boards, defects) => {
        const opened = {
          shop: textOf('shop.csv', shop),
          parts: textOf('parts.csv', parts),
          boards: textOf('boards.csv', boards),
          defects: textOf('defects.csv', defects),
        };
        const read = readJobTexts('x', {
          shop: opened.shop.text,
          parts: opened.parts.text,
          boards: opened.boards.text,
          defects: opened.defects.text,
          yard: { file: 'yard.csv', text: null },
        });
        const problems = [...Object.values(opened).flatMap((one) => one.problems), ...read.problems];
        expect(problems.length).toBeGreaterThan(0);
        expectSaid(problems);
      }),
      { numRuns: 100 },
    );
  });
});

describe('the place of the first byte that is no UTF-8', () => {
  it('agrees with a search byte by byte', () => {
    const half = fc.string({ unit: 'grapheme', maxLength: 20 }).map((text) => new TextEncoder().encode(text));
    fc.assert(
      fc.property(
        half,
        fc.uint8Array({ minLength: 1, maxLength: 3, min: 0x80 }),
        half,
        (before, bad, after) => {
          const raw = new Uint8Array([...before, ...bad, ...after]);
          const read = decoded(raw, 'a.csv');
          if (read.ok) return;
          const [problem] = read.problems;
          const at = problem?.kind === 'not UTF-8' ? problem.at : undefined;
          // The longest start that is whole characters.
          let end = 0;
          for (let length = 0; length <= raw.length; length += 1)
            if (decoded(raw.subarray(0, length), 'a.csv').ok) end = length;
          const lines = new TextDecoder('utf-8', { ignoreBOM: true })
            .decode(raw.subarray(0, end))
            .split(/\r\n?|\n/);
          expect([at?.line, at?.column]).toEqual([lines.length, Array.from(lines.at(-1) ?? '').length + 1]);
        },
      ),
      { numRuns: 100 },
    );
  });
});
