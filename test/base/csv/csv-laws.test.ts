import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guardFormula, unguardFormula } from '../../../src/base/csv/formula-guard.ts';
import { placeOf, readCsv } from '../../../src/base/csv/read-csv.ts';
import { writeCsv } from '../../../src/base/csv/write-csv.ts';

const tricky = fc.string({ unit: fc.constantFrom(...'\'"=+-@\t\r\n,;.1eé漢😀 \uFEFF\u0000＝ab') });
const text = fc.oneof(
  tricky,
  fc.string({ unit: 'grapheme' }),
  fc.constantFrom('__proto__', '=1+1', '-22.5', "'=1"),
);
const filled = text.filter((cell) => cell.trim() !== '');

/** Rows of one width whose last column is filled, since blank ends are cut by design. */
const rows = fc.integer({ min: 0, max: 4 }).chain((width) =>
  fc.array(
    fc
      .tuple(fc.array(text, { minLength: width, maxLength: width }), filled)
      .map(([cells, last]) => [...cells, last]),
    { minLength: 1, maxLength: 6 },
  ),
);

describe('laws of CSV', () => {
  it('read(write(x)) = x', () => {
    fc.assert(
      fc.property(rows, (written) => {
        const back = readCsv('x.csv', writeCsv(written));
        if (!back.ok) throw new Error(JSON.stringify(back.problems));
        const { header, rows: others } = back.value;
        expect([header, ...others].map((row) => row.cells)).toEqual(written);
      }),
      { numRuns: 300 },
    );
  });

  it('a guarded cell starts with no sign that a spreadsheet runs, plain numbers apart', () => {
    fc.assert(
      fc.property(text, (cell) => {
        const guarded = guardFormula(cell);
        expect(unguardFormula(guarded)).toBe(cell);
        if (/^[=+\-@\t\r]/.test(guarded))
          expect(Number.isFinite(Number(guarded.replace(',', '.')))).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it('no text throws, and each place lies in the text where its cell stands', () => {
    const anything = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 200 }),
      fc.string({ unit: fc.constantFrom(...'",;\t\r\n ab=😀'), maxLength: 60 }),
    );
    fc.assert(
      fc.property(anything, (source) => {
        const result = readCsv('x.csv', source);
        if (!result.ok) {
          expect(result.problems.length).toBeGreaterThan(0);
          return;
        }
        const table = result.value;
        const lines = table.source.text.split(/\r\n?|\n/);
        for (const row of [table.header, ...table.rows]) {
          row.cells.forEach((cell, index) => {
            const { line, column, excerpt } = placeOf(table, row, index);
            expect(lines[line - 1]).toBe(excerpt?.line);
            const meant = Array.from(excerpt?.line ?? '')
              .slice(column - 1, column - 1 + (excerpt?.length ?? 0))
              .join('');
            // A blank in front keeps an apostrophe from being a guard, and the place leaves that blank out.
            if (cell.trim() !== '' && !meant.includes('"'))
              expect([meant, unguardFormula(meant).trim()]).toContain(cell.trim());
          });
        }
      }),
      { numRuns: 600 },
    );
  });
});

describe('guarding by hand', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['+cmd', "'+cmd"],
    ['-x', "'-x"],
    ['@a', "'@a"],
    ['\tx', "'\tx"],
    ['\rx', "'\rx"],
    ["'=1", "''=1"],
    ['-22.5', '-22.5'],
    ['+3', '+3'],
    ['-22,5', '-22,5'],
    ['-1+2', "'-1+2"],
    ["'quoted'", "'quoted'"],
    ['plain', 'plain'],
    ['', ''],
  ])('%j becomes %j', (plain, guarded) => {
    expect(guardFormula(plain)).toBe(guarded);
    expect(unguardFormula(guarded)).toBe(plain);
  });
});
