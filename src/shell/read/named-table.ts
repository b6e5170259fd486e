import {
  type CsvRow,
  type CsvTable,
  type LengthUnit,
  type Place,
  nearestName,
  placeOf,
  placeOfRow,
  readCsv,
} from '../../index.ts';
import type { ChangedColumn, HeaderProblem, Implausible, ReadProblem } from './problem.ts';

/** A column that a file may have; `needed` ones must be there. */
export interface Column {
  readonly name: string;
  readonly needed?: boolean;
  /** What it was called when it, or its neighbours, meant something else: a file that has this, or neither, is an old one. */
  readonly changedFrom?: { readonly formerly: string; readonly now: ChangedColumn };
}

/** A table whose columns are known by name, being read: problems and cautions are gathered as they are met. */
export interface NamedTable {
  readonly table: CsvTable;
  readonly indexOf: ReadonlyMap<string, number>;
  /** Unit of a bare number. */
  readonly unit: LengthUnit;
  readonly problems: ReadProblem[];
  readonly cautions: Implausible[];
}

/** One cell under a known name. */
export interface Field {
  /** Its column, or in a file of settings its setting. */
  readonly label: string;
  /** Without blanks at either end; empty when the cell is, or when the file has no such column. */
  readonly text: string;
  readonly at: () => Place;
}

/**
 * Opens a CSV text whose header must hold known columns only, each once, and every needed one. Capitals and blanks in
 * the header are forgiven.
 * @returns the table, or null with the problems when no row of it can be understood
 */
export function openTable(
  file: string,
  text: string,
  columns: readonly Column[],
  unit: LengthUnit,
): { readonly named: NamedTable | null; readonly problems: readonly ReadProblem[] } {
  const read = readCsv(file, text);
  if (!read.ok) return { named: null, problems: read.problems };
  const table = read.value;
  const { indexOf, problems } = readHeader(table, columns);
  if (problems.length > 0) return { named: null, problems };
  const named: NamedTable = { table, indexOf, unit, problems: [], cautions: [] };
  questionSplits(named);
  return { named, problems: [] };
}

/** The cell of a row under a column's name. */
export function fieldOf(named: NamedTable, row: CsvRow, column: string, label = column): Field {
  const index = named.indexOf.get(column);
  const text = index === undefined ? '' : (row.cells[index] ?? '').trim();
  return { label, text, at: () => placeOf(named.table, row, index ?? 0) };
}

function readHeader(
  table: CsvTable,
  columns: readonly Column[],
): { indexOf: Map<string, number>; problems: HeaderProblem[] } {
  const { header } = table;
  const known = columns.map(({ name }) => name);
  const nameOf = new Map(known.map((name) => [folded(name), name]));
  const written = header.cells.map(folded);
  const free = known.filter((name) => !written.includes(folded(name)));
  const indexOf = new Map<string, number>();
  const meant = new Set<string>();
  const problems: HeaderProblem[] = [];
  written.forEach((cell, index) => {
    const at = (): Place => placeOf(table, header, index);
    const name = nameOf.get(cell);
    const first = name === undefined ? undefined : indexOf.get(name);
    const changed = columns.find(({ changedFrom }) => folded(changedFrom?.formerly ?? '') === cell);
    if (cell === '') problems.push({ kind: 'nameless column', at: at() });
    else if (changed?.changedFrom !== undefined && !written.includes(changed.name)) {
      problems.push({ kind: 'changed column', at: at(), ...changed.changedFrom });
      meant.add(changed.name);
    } else if (name === undefined) {
      const nearest = nearestName(cell, free.length > 0 ? free : known)?.name ?? '';
      meant.add(nearest);
      problems.push({
        kind: 'unknown column',
        at: at(),
        name: (header.cells[index] ?? '').trim(),
        nearest,
        known,
      });
    } else if (first !== undefined)
      problems.push({ kind: 'double column', at: at(), name, first: placeOf(table, header, first) });
    else indexOf.set(name, index);
  });
  // A column that was only misspelt is not reported as missing too.
  const needed = columns.filter((column) => column.needed);
  for (const { name, changedFrom } of needed) {
    if (indexOf.has(name) || meant.has(name)) continue;
    const at = placeOfRow(table, header);
    if (changedFrom !== undefined)
      problems.push({ kind: 'changed column', at, formerly: null, now: changedFrom.now });
    else problems.push({ kind: 'missing column', at, name, needed: needed.map((column) => column.name) });
  }
  return { indexOf, problems };
}

/** A name with its capitals and the number of its blanks forgiven. */
export function folded(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}

const bareNumber = /^(?:\d+ )?\d+(?:\/\d+)?$/;

/**
 * Questions rows that a decimal comma may have split: where commas part the cells, `58,25` is two of them, and what
 * stood last comes to stand under `note`.
 */
function questionSplits(named: NamedTable): void {
  if (named.table.delimiter !== ',' || !named.indexOf.has('note')) return;
  for (const row of named.table.rows) {
    const note = fieldOf(named, row, 'note');
    const whole = row.cells.map((cell) => /^\d+$/.test(cell.trim()));
    const isSplit = whole.some((is, column) => is && whole[column + 1] === true);
    if (isSplit && bareNumber.test(note.text)) {
      const { label, text } = note;
      named.cautions.push({ kind: 'implausible', at: note.at(), label, text, doubt: { why: 'split' } });
    }
  }
}
