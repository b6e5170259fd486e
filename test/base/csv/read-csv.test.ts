import { describe, expect, it } from 'vitest';
import { type CsvTable, placeOf, readCsv } from '../../../src/base/csv/read-csv.ts';

function table(text: string): CsvTable {
  const result = readCsv('a.csv', text);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

/** Every cell as [text, line, column, characters], header first. */
function cells(source: string): [string, number, number, number][][] {
  const read = table(source);
  return [read.header, ...read.rows].map((row) =>
    row.cells.map((text, index) => {
      const { line, column, excerpt } = placeOf(read, row, index);
      return [text, line, column, excerpt?.length ?? -1];
    }),
  );
}

describe('places of cells', () => {
  it('counts lines and columns from 1', () => {
    expect(cells('board,from\nB3,84\n\nB4,98\n')).toEqual([
      [
        ['board', 1, 1, 5],
        ['from', 1, 7, 4],
      ],
      [
        ['B3', 2, 1, 2],
        ['84', 2, 4, 2],
      ],
      [
        ['B4', 4, 1, 2],
        ['98', 4, 4, 2],
      ],
    ]);
  });

  it.each(['\n', '\r\n', '\r'])('whatever ends the lines: %j', (lineEnd) => {
    expect(cells(['a,b', '', 'c,d', 'e,f', ''].join(lineEnd)).flat()).toEqual([
      ['a', 1, 1, 1],
      ['b', 1, 3, 1],
      ['c', 3, 1, 1],
      ['d', 3, 3, 1],
      ['e', 4, 1, 1],
      ['f', 4, 3, 1],
    ]);
  });

  it('mixed line ends', () => {
    expect(cells('a,b\r\nc,d\ne,f\rg,h').flat().slice(-2)).toEqual([
      ['g', 4, 1, 1],
      ['h', 4, 3, 1],
    ]);
  });

  it('over quoted cells of several lines', () => {
    expect(cells('a,b\n"one\ntwo","say ""x"""\nc,d\n').flat().slice(2)).toEqual([
      ['one\ntwo', 2, 1, 4],
      ['say "x"', 3, 6, 11],
      ['c', 4, 1, 1],
      ['d', 4, 3, 1],
    ]);
  });

  it('in characters, not in code units or bytes', () => {
    expect(cells('a,b\n😀é漢,b\n').flat().slice(2)).toEqual([
      ['😀é漢', 2, 1, 3],
      ['b', 2, 5, 1],
    ]);
  });

  it('points at the text, not at the blanks round it', () => {
    expect(cells('a,b\n  x y ,   \n').flat().slice(2)).toEqual([
      ['  x y ', 2, 3, 3],
      ['   ', 2, 8, 1],
    ]);
  });

  it('past a byte-order mark', () => {
    expect(cells('\uFEFFa,b\nc,d').flat().slice(0, 2)).toEqual([
      ['a', 1, 1, 1],
      ['b', 1, 3, 1],
    ]);
  });
});

describe('what spreadsheets write', () => {
  it('semicolons mean decimal commas', () => {
    const read = table('part;length\nFront;63,5\n');
    expect([read.delimiter, read.decimalComma]).toEqual([';', true]);
    expect(read.rows[0]?.cells).toEqual(['Front', '63,5']);
  });

  it('tabs', () => {
    const read = table('part\tlength\nFront\t63.5\n');
    expect([read.delimiter, read.decimalComma]).toEqual(['\t', false]);
    expect(read.rows[0]?.cells).toEqual(['Front', '63.5']);
  });

  it('a quoted header does not mislead the search for the delimiter', () => {
    expect(table('"a;b;c",d\n1,2\n').delimiter).toBe(',');
  });

  it('inch marks inside unquoted cells stand as they are', () => {
    expect(table('a,b\n5\' 3 1/2",6"\n').rows[0]?.cells).toEqual([`5' 3 1/2"`, '6"']);
  });

  it('text after a closing quote stands as it is', () => {
    expect(table('a,b\n"x"y,z\n').rows[0]?.cells).toEqual(['"x"y', 'z']);
  });

  it('empty columns at the end and rows of blanks are left out', () => {
    const read = table('a,b,,\n1,2,,\n,,,\n , \n3,4\n');
    expect(read.header.cells).toHaveLength(2);
    expect(read.rows.map((row) => row.cells)).toEqual([
      ['1', '2'],
      ['3', '4'],
    ]);
  });

  it('a header alone is a table without rows', () => {
    expect(table('a,b').rows).toEqual([]);
  });

  it('cells of 10,000 characters', () => {
    const long = 'x'.repeat(10_000);
    expect(table(`a,b\n${long},"${long}"\n`).rows[0]?.cells).toEqual([long, long]);
  });
});

describe('problems', () => {
  const problems = (text: string): unknown[] => {
    const result = readCsv('a.csv', text);
    return result.ok
      ? []
      : result.problems.map(({ at, ...rest }) => ({ ...rest, at: [at.line, at.column, at.excerpt?.length] }));
  };

  it.each(['', '\uFEFF', '\n\n', ' , ,\n'])('nothing in the file: %j', (text) => {
    expect(problems(text)).toEqual([{ kind: 'empty file', at: [1, 1, undefined] }]);
  });

  it('all ragged rows', () => {
    expect(problems('a,b\n1\n1,2\n1,2,3,4\n')).toEqual([
      { kind: 'ragged row', cells: 1, columns: 2, at: [2, 1, 1] },
      { kind: 'ragged row', cells: 4, columns: 2, at: [4, 5, 1] },
    ]);
  });

  it('a quote that is never closed, at the quote', () => {
    expect(problems('a,b\n1,"2\n3,4\n')).toEqual([{ kind: 'quote not closed', at: [2, 3, 2] }]);
    expect(problems('"a,b\n')).toEqual([{ kind: 'quote not closed', at: [1, 1, 4] }]);
  });

  it('a row of more than a million characters', () => {
    expect(problems(`a,b\n1,${'x'.repeat(1_000_100)}\n`)).toMatchObject([
      { kind: 'row too long', most: 1_000_000 },
    ]);
  });
});
