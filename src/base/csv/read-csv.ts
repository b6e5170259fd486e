import { CsvError, parse } from 'csv-parse/sync';
import { type Place, type Result, failure, success } from '../result/result.ts';
import { type Delimiter, detectDelimiter } from './delimiter.ts';
import { unguardFormula } from './formula-guard.ts';
import { type SourceText, placeAt, sourceText } from './source-text.ts';

/** One row: the texts of its cells, and where it stands in the source (offsets, its line end included). */
export interface CsvRow {
  readonly cells: readonly string[];
  readonly start: number;
  readonly end: number;
}

/** A file of rows under one header. Rows are arrays, so that no text of the file ever becomes a key. */
export interface CsvTable {
  readonly source: SourceText;
  readonly delimiter: Delimiter;
  /** Files separated by semicolons come from places that write 63,5. */
  readonly decimalComma: boolean;
  /** Without the nameless columns at its end. */
  readonly header: CsvRow;
  /** As many cells in each row as in the header; rows of blanks alone are left out. */
  readonly rows: readonly CsvRow[];
}

export type CsvProblem =
  | { readonly kind: 'empty file'; readonly at: Place }
  | { readonly kind: 'quote not closed'; readonly at: Place }
  | { readonly kind: 'row too long'; readonly at: Place; readonly most: number }
  | { readonly kind: 'ragged row'; readonly at: Place; readonly cells: number; readonly columns: number };

/** A row longer than this is taken for a quote gone wrong. */
const longestRow = 1_000_000;

/**
 * Reads a CSV text: RFC 4180, and what spreadsheets make of it. Takes LF, CRLF and CR, even mixed; comma, semicolon or
 * tab, whichever the first line uses; a byte-order mark; quoted cells over several lines; quotes inside an unquoted
 * cell (`5' 3 1/2"`) as they stand. A guarded formula loses its apostrophe (see `guardFormula`).
 * @param file the name to give in places
 * @returns the table, or every ragged row; a lone surrogate in the text comes back as U+FFFD
 */
export function readCsv(file: string, text: string): Result<CsvTable, CsvProblem> {
  const source = sourceText(file, text);
  const delimiter = detectDelimiter(source.text);
  const read = rowsOf(source, delimiter);
  if (!read.ok) return read;
  const [first, ...others] = read.value.filter(({ cells }) => !cells.every(isBlank));
  if (first === undefined) return failure([{ kind: 'empty file', at: { file, line: 1, column: 1 } }]);
  const columns = first.cells.findLastIndex((cell) => !isBlank(cell)) + 1;
  const table: CsvTable = {
    source,
    delimiter,
    decimalComma: delimiter === ';',
    header: { ...first, cells: first.cells.slice(0, columns) },
    rows: others.map((row) => ({ ...row, cells: row.cells.slice(0, columns) })),
  };
  const problems = others.flatMap((row) => {
    const surplus = row.cells.findIndex((cell, column) => column >= columns && !isBlank(cell));
    if (surplus < 0 && row.cells.length >= columns) return [];
    const at = placeOf(table, row, surplus < 0 ? row.cells.length - 1 : surplus);
    return [{ kind: 'ragged row', at, cells: row.cells.length, columns } as const];
  });
  return problems.length > 0 ? failure(problems) : success(table);
}

/**
 * The place of a cell. Only the row's start and end were kept on reading (asking the parser for the place of every cell
 * takes ten times as long as reading), so the row is parsed once more.
 * @param column index, from 0
 */
export function placeOf(table: CsvTable, row: CsvRow, column: number): Place {
  const span = cellSpans(table.source.text.slice(row.start, row.end), table.delimiter)[column];
  return placeAt(table.source, row.start + (span?.start ?? 0), row.start + (span?.end ?? 0));
}

/** The place of a row from end to end. */
export function placeOfRow(table: CsvTable, row: CsvRow): Place {
  return placeAt(table.source, row.start, row.end);
}

function isBlank(cell: string): boolean {
  return cell.trim() === '';
}

const dialect = {
  record_delimiter: ['\r\n', '\n', '\r'],
  relax_column_count: true,
  relax_quotes: true,
  max_record_size: longestRow,
};

function rowsOf(source: SourceText, delimiter: Delimiter): Result<CsvRow[], CsvProblem> {
  const rows: CsvRow[] = [];
  const offsetOfByte = byteWalker(source.text);
  let start = 0;
  const keep = (cells: string[], info: { readonly bytes: number }): null => {
    const end = offsetOfByte(info.bytes);
    rows.push({ cells: cells.map(unguardFormula), start, end });
    start = end;
    return null;
  };
  try {
    parse(source.text, { ...dialect, delimiter, on_record: keep });
    return success(rows);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const last = cellSpans(source.text.slice(start), delimiter).at(-1) ?? { start: 0, end: 0 };
    const at = placeAt(source, start + last.start, start + last.end);
    if (error.code === 'CSV_QUOTE_NOT_CLOSED') return failure([{ kind: 'quote not closed', at }]);
    if (error.code === 'CSV_MAX_RECORD_SIZE')
      return failure([{ kind: 'row too long', at, most: longestRow }]);
    throw error;
  }
}

interface Span {
  readonly start: number;
  readonly end: number;
}

/**
 * Where the cells of one row stand in its text. The parser hands over each cell with the number of bytes up to its end;
 * a cell starts where the last one ended, one delimiter further. A cell the parser gives up on is the last.
 */
function cellSpans(text: string, delimiter: Delimiter): Span[] {
  const spans: Span[] = [];
  const offsetOfByte = byteWalker(text);
  let next = 0;
  const keep = (cell: string, info: { readonly bytes: number }): string => {
    const end = offsetOfByte(info.bytes);
    spans.push({ start: next, end });
    next = end + 1;
    return cell;
  };
  try {
    parse(text, { ...dialect, delimiter, to: 1, cast: keep });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    spans.push({ start: next, end: text.length });
  }
  return spans;
}

/** Turns byte counts of the text's UTF-8 form, given in rising order, into offsets. O(length) over all calls. */
function byteWalker(text: string): (bytes: number) => number {
  let offset = 0;
  let byte = 0;
  return (bytes) => {
    while (byte < bytes && offset < text.length) {
      const code = text.codePointAt(offset) ?? 0;
      byte += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
      offset += code < 0x10000 ? 1 : 2;
    }
    return offset;
  };
}
