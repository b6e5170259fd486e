import { type CsvRow, type Face, type Part, type PartRow, type Shop, type Tick } from '../../index.ts';
import { readPlannedCell } from '../planned-cell.ts';
import { acceptField } from './accept.ts';
import { lengthField, numberField, numberText, uniqueName, wordField } from './field.ts';
import { plausible } from './implausible.ts';
import { type Field, type NamedTable, fieldOf, folded, openTable } from './named-table.ts';
import type { Reading } from './problem.ts';
import { totalArea } from './total-area.ts';

/** Columns of `parts.csv`, in the order they are written. */
export const partColumns = [
  { name: 'part', needed: true },
  { name: 'quantity', needed: true },
  { name: 'length', needed: true },
  { name: 'width', needed: true },
  { name: 'thickness', needed: true },
  { name: 'species' },
  { name: 'grain' },
  { name: 'quality' },
  { name: 'show' },
  { name: 'accept' },
  { name: 'run' },
  { name: 'left end' },
  { name: 'right end' },
  { name: 'extra length' },
  { name: 'extra width' },
  { name: 'glue-up' },
  { name: 'value' },
  { name: 'board' },
  { name: 'note' },
  { name: 'planned' },
] as const;

/** The columns that a plan's record of a row may hold. */
export const recordedColumns = partColumns.filter(({ name }) => name !== 'part' && name !== 'planned');

/** What `parts.csv` holds. */
export interface PartsFile {
  readonly rows: readonly PartRow[];
  /** Whether it has the column that tells planned rows from the person's own. */
  readonly marksPlanned: boolean;
}

/** More copies than this in one row are taken for a slip. */
export const mostCopies = 100_000;

/**
 * Reads `parts.csv`. Sizes are rounded up: a part never shrinks.
 * @param boards names that a pin may give; null when the boards could not be read, and pins are not looked up
 */
export function readParts(
  file: string,
  text: string,
  shop: Shop,
  boards: ReadonlySet<string> | null,
): Reading<PartsFile> {
  const { named, problems } = openTable(file, text, partColumns, shop.units);
  if (named === null) return { value: { rows: [], marksPlanned: false }, problems };
  const seen = new Map<string, Field>();
  const area = totalArea('parts');
  const rows = named.table.rows.map((row): PartRow => {
    const label = fieldOf(named, row, 'part');
    const name = uniqueName(named, label, 'part', seen);
    const part = partOf(named, row, name, boards);
    area.add(named, label, part);
    return { part, planned: plannedPart(named, row, name) };
  });
  const marksPlanned = named.indexOf.has('planned');
  return { value: { rows, marksPlanned }, problems: named.problems, cautions: named.cautions };
}

/** The part as the plan wrote it, by the record of its cells; null for a row that no plan wrote. */
function plannedPart(named: NamedTable, row: CsvRow, name: string): Part | null {
  const field = fieldOf(named, row, 'planned');
  if (field.text === '') return null;
  const columns = recordedColumns.map((column) => column.name);
  const record = readPlannedCell(field.text, columns);
  const texts = new Map([
    ['quantity', '1'],
    ...(record ?? []).map(({ column, text }) => [column, text] as const),
  ]);
  const recorded: NamedTable = {
    ...named,
    // A plan writes its record with a point, whatever the file's own decimal sign.
    table: { ...named.table, decimalComma: false },
    indexOf: new Map(columns.map((column, index) => [column, index])),
    problems: [],
    cautions: [],
  };
  const cells = columns.map((column) => texts.get(column) ?? '');
  const part = partOf(recorded, { ...row, cells }, name, null);
  if (record !== null && recorded.problems.length === 0) return part;
  named.problems.push({ kind: 'no record', at: field.at() });
  return null;
}

function partOf(named: NamedTable, row: CsvRow, name: string, boards: ReadonlySet<string> | null): Part {
  const field = (column: (typeof partColumns)[number]['name']): Field => fieldOf(named, row, column);
  const size = (column: 'length' | 'width' | 'thickness'): Tick =>
    lengthField(named, field(column), {
      side: 'up',
      range: 'more than 0',
      ...(column === 'thickness' ? { plausible: plausible.finishedThickness } : {}),
    });
  const extra = (side: 'length' | 'width'): Partial<Part> => {
    const given = field(`extra ${side}`);
    if (given.text === '') return {};
    const more = lengthField(named, given, { side: 'up', range: '0 or more' });
    return side === 'length' ? { extraLength: more } : { extraWidth: more };
  };
  const run = field('run').text;
  return {
    name,
    quantity: numberField(named, field('quantity'), {
      wanted: 'whole number',
      range: { least: 0, most: mostCopies },
    }),
    length: size('length'),
    width: size('width'),
    thickness: size('thickness'),
    species: field('species').text,
    grain: wordField(named, field('grain'), ['along', 'across', 'any'], 'along'),
    quality: wordField(named, field('quality'), ['clear-2', 'clear-1', 'sound', 'any'], 'clear-1'),
    show: showField(named, field('show')),
    accept: acceptField(named, field('accept')),
    run: run === '' ? null : run,
    leftEnd: endField(named, field('left end')),
    rightEnd: endField(named, field('right end')),
    ...extra('length'),
    ...extra('width'),
    glueUp: numberField(named, field('glue-up'), {
      wanted: 'whole number',
      range: { least: 1, most: 100 },
      empty: 1,
    }),
    value: valueField(named, field('value')),
    pin: pinField(named, field('board'), boards),
    note: field('note').text,
  };
}

function showField(named: NamedTable, field: Field): number {
  if (field.text === '' || folded(field.text) === 'no') return 0;
  if (folded(field.text) === 'yes') return 1;
  return numberField(named, field, { wanted: 'show', range: { least: 0 } });
}

/** Degrees off square: `miter 45`, `45`, `-22.5°`; empty and `square` are 0. */
function endField(named: NamedTable, field: Field): number {
  const angle = folded(field.text)
    .replace(/^(?:miter|mitre|bevel)\b/, '')
    .replace(/°$/, '')
    .trim();
  if (folded(field.text) === '' || angle === 'square') return 0;
  return numberText(named, field, angle, { wanted: 'angle', range: { above: -90, below: 90 } });
}

function valueField(named: NamedTable, field: Field): number | null {
  return field.text === '' ? null : numberField(named, field, { wanted: 'number', range: { least: 0 } });
}

/** `B3` or `B3:A`. A board may have a colon in its own name, so the whole text is looked up first. */
function pinField(named: NamedTable, field: Field, boards: ReadonlySet<string> | null): Part['pin'] {
  if (field.text === '') return null;
  const split = /^(.*):\s*([AB])$/is.exec(field.text);
  const asFace = split === null ? null : { board: (split[1] ?? '').trim(), face: faceOf(split[2]) };
  if (boards === null) return asFace ?? { board: field.text, face: null };
  if (boards.has(field.text)) return { board: field.text, face: null };
  if (asFace !== null && boards.has(asFace.board)) return asFace;
  const name = asFace?.board ?? field.text;
  named.problems.push({ kind: 'unknown board', at: field.at(), name, by: 'pin', known: [...boards] });
  return null;
}

function faceOf(letter: string | undefined): Face {
  return letter?.toUpperCase() === 'B' ? 'B' : 'A';
}
