import { journalColumns, type Cells, type JournalColumn } from './journal-columns.ts';

/** How a journal is written: a spreadsheet may have re-saved it its own way, and what is appended follows that. */
export interface Dialect {
  readonly delimiter: ',' | ';' | '\t';
  readonly lineEnd: '\n' | '\r\n' | '\r';
  /** The header's cells in file order; null where the name is none of ours. */
  readonly columns: readonly (JournalColumn | null)[];
}

/** How a new journal is written. */
export const ownDialect: Dialect = { delimiter: ',', lineEnd: '\n', columns: journalColumns };

/** The header line of a new journal, with its line end. */
export const ownHeader = `${journalColumns.join(',')}\n`;

/**
 * One record as a whole line, line end and all. Cells hold no line ends (`cellText` spells them out), so that one
 * record is always one physical line.
 */
export function writeLine(cells: Cells, dialect: Dialect): string {
  const written = dialect.columns.map((column) => (column === null ? '' : (cells.get(column) ?? '')));
  return written.map((cell) => quoted(cell)).join(dialect.delimiter) + dialect.lineEnd;
}

/** Quoted whenever any dialect would need it, or a reader might trim it. */
function quoted(cell: string): string {
  return /[",;\t\r\n]|^\s|\s$/.test(cell) ? `"${cell.replace(/"/g, '""')}"` : cell;
}

/**
 * The cells of one physical line, or null when a quote is left open. Own code instead of the CSV package, since a
 * journal must go on after a damaged line: a parser of whole files takes an open quote as the start of a cell that
 * swallows all that follows.
 */
export function splitLine(line: string, delimiter: string): string[] | null {
  if (!line.includes('"')) return line.split(delimiter);
  const cells: string[] = [];
  let at = 0;
  for (;;) {
    if (line.charAt(at) === '"') {
      const [cell, next] = quotedCell(line, at + 1);
      if (next < 0) return null;
      // Text between a closing quote and the next delimiter: a hand's slip, kept as it stands.
      const stop = line.indexOf(delimiter, next);
      cells.push(cell + line.slice(next, stop < 0 ? undefined : stop));
      if (stop < 0) return cells;
      at = stop + 1;
    } else {
      const stop = line.indexOf(delimiter, at);
      cells.push(line.slice(at, stop < 0 ? undefined : stop));
      if (stop < 0) return cells;
      at = stop + 1;
    }
  }
}

/** The cell that starts after an opening quote, and where its closing quote ends; −1 when none closes it. */
function quotedCell(line: string, start: number): readonly [cell: string, next: number] {
  let cell = '';
  let from = start;
  for (;;) {
    const quote = line.indexOf('"', from);
    if (quote < 0) return ['', -1];
    cell += line.slice(from, quote);
    if (line.charAt(quote + 1) !== '"') return [cell, quote + 1];
    cell += '"';
    from = quote + 2;
  }
}

/**
 * Reads a header line: the delimiter that makes the most of our column names of it.
 * @returns the columns in file order, null for a name that is none of ours (with its text in `unknown`)
 */
export function readHeader(line: string): {
  readonly delimiter: Dialect['delimiter'];
  readonly columns: Dialect['columns'];
  readonly names: readonly string[];
} {
  const tries = ([',', ';', '\t'] as const).map((delimiter) => {
    const names = (splitLine(line, delimiter) ?? []).map((name) => name.trim());
    const columns = names.map(
      (name) => journalColumns.find((known) => known.toLowerCase() === name.toLowerCase()) ?? null,
    );
    return { delimiter, columns, names };
  });
  const known = (columns: Dialect['columns']): number => columns.filter((column) => column !== null).length;
  return tries.reduce((best, next) => (known(next.columns) > known(best.columns) ? next : best));
}
