import { readHeader, splitLine, type Dialect } from './dialect.ts';
import { endMark, neededColumns, type Cells, type JournalColumn } from './journal-columns.ts';
import type { JournalNotice, NoJournal } from './problem.ts';

/** One record of the file as its cells, or as a line that cannot be taken apart. */
export interface RawLine {
  /** Physical line it begins on, from 1. */
  readonly line: number;
  readonly text: string;
  readonly cells: Cells | null;
  /** Its last cell is there, so nothing of it was torn off. */
  readonly ended: boolean;
}

/** A journal's text taken apart; nothing is judged yet but the header and the very end. */
export interface SplitJournal {
  readonly dialect: Dialect;
  readonly lines: readonly RawLine[];
  /** The last record stands without a line end behind it. */
  readonly open: boolean;
  readonly notices: readonly JournalNotice[];
  readonly physicalLines: readonly string[];
}

/** How many physical lines a cell with line ends in it may run over: more, and an open quote is taken for damage. */
const mostLinesOfARecord = 30;

/**
 * Takes a journal's text apart into records, whatever dialect a spreadsheet left it in. A line with a quote left open
 * is joined with those after it when that makes a whole record, else it alone is damaged.
 * @param text decoded, a byte-order mark may lead
 * @returns the lines, or why the file is no journal
 */
export function splitJournal(text: string): SplitJournal | NoJournal {
  const plain = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const lineEnd = plain.includes('\r\n')
    ? '\r\n'
    : plain.includes('\n')
      ? '\n'
      : plain.includes('\r')
        ? '\r'
        : '\n';
  const physicalLines = plain.split(lineEnd === '\r' ? '\r' : '\n');
  if (lineEnd !== '\r')
    physicalLines.forEach((line, index) => {
      if (line.endsWith('\r')) physicalLines[index] = line.slice(0, -1);
    });
  const headerAt = physicalLines.findIndex((line) => line.trim() !== '');
  const header = readHeader(physicalLines[headerAt] ?? '');
  const missing = neededColumns.filter((column) => !header.columns.includes(column));
  if (missing.length > 0) return { kind: 'no journal', missing };
  const notices: JournalNotice[] = header.names
    .filter((name, index) => name !== '' && header.columns[index] === null)
    .map((name) => ({ kind: 'unknown column', name }));
  const { delimiter, columns } = header;
  const lines: RawLine[] = [];
  for (let at = headerAt + 1; at < physicalLines.length;) {
    const taken = recordAt(physicalLines, at, header);
    if (taken.record.text.split(delimiter).some((cell) => cell.trim() !== '')) lines.push(taken.record);
    at = taken.next;
  }
  const open = physicalLines.at(-1) !== '';
  return { dialect: { delimiter, lineEnd, columns }, lines, open, notices, physicalLines };
}

function recordAt(
  physicalLines: readonly string[],
  at: number,
  header: ReturnType<typeof readHeader>,
): { readonly record: RawLine; readonly next: number } {
  const text = physicalLines[at] ?? '';
  const make = (whole: string, cells: readonly string[] | null): RawLine => {
    const named = cells === null ? null : nameCells(cells, header.columns);
    const ended = !header.columns.includes('end') || (named?.get('end') ?? '').trim() === endMark;
    return { line: at + 1, text: whole, cells: named, ended };
  };
  const alone = splitLine(text, header.delimiter);
  if (alone !== null) return { record: make(text, alone), next: at + 1 };
  let joined = text;
  const last = Math.min(physicalLines.length, at + mostLinesOfARecord);
  for (let next = at + 1; next < last; next += 1) {
    joined += `\n${physicalLines[next] ?? ''}`;
    const cells = splitLine(joined, header.delimiter);
    if (cells === null) continue;
    // A record that swallowed its neighbours has too many cells: then the open quote is damage, not a long note.
    if (cells.length === header.columns.length) return { record: make(joined, cells), next: next + 1 };
    break;
  }
  return { record: make(text, null), next: at + 1 };
}

function nameCells(cells: readonly string[], columns: Dialect['columns']): Cells {
  const named = new Map<JournalColumn, string>();
  columns.forEach((column, index) => {
    const cell = cells[index];
    // Most cells are empty, and an empty one says what an absent one says: left out, a long journal loads faster.
    if (column !== null && cell !== undefined && cell !== '' && !named.has(column)) named.set(column, cell);
  });
  return named;
}
