import {
  type LengthUnit,
  type Part,
  type PartRow,
  type Result,
  type Shop,
  type Tick,
  failure,
  readCsv,
  success,
  writeLength,
} from '../../index.ts';
import { plannedCell } from '../planned-cell.ts';
import type { Problem } from '../print-problem.ts';
import { folded } from '../read/named-table.ts';
import { partColumns, recordedColumns } from '../read/parts.ts';
import { likeBefore } from './like-before.ts';
import { tableText } from './table-text.ts';

type Column = (typeof partColumns)[number]['name'];
type PartText = Exclude<Column, 'planned'>;

/**
 * The text of `parts.csv`. Read with the same shop (and boards that know the pins) it gives back the same rows.
 * One pin cannot be told apart in this format: face A of board `X` when there is also a board named `X:A`.
 */
export function writePartsCsv(rows: readonly PartRow[], shop: Shop): string {
  return tableText(partColumns, rows, rowTexts(shop));
}

/**
 * The text of a `parts.csv` whose rows are replaced: its columns in their order, its delimiter, line ends and mark, its own
 * rows and every cell that says the same as before stay as they were written.
 * @param text of the file, whose rows read are `before`
 */
export function replacedPartsCsv(
  file: string,
  text: string,
  before: readonly PartRow[],
  rows: readonly PartRow[],
  shop: Shop,
): Result<string, Problem> {
  const read = readCsv(file, text);
  if (!read.ok) return failure(read.problems);
  const table = read.value;
  const written = rowTexts(shop);
  const rowBefore = new Map(
    before.map((row, index) => [row.part.name, { row, cells: table.rows[index]?.cells }]),
  );
  const known = partColumns.map(({ name }) => name);
  const there = table.header.cells.map((cell) => known.find((name) => folded(name) === folded(cell)));
  const more = known.filter(
    (name) => !there.includes(name) && (name === 'planned' || rows.some((row) => written[name](row) !== '')),
  );
  const cellsOf = (row: PartRow): string[] => {
    const old = rowBefore.get(row.part.name);
    return [...there, ...more].map((name, index) => {
      if (name === undefined) return '';
      const [now, was] = [written[name](row), old && written[name](old.row)];
      if (now === was) return old?.cells?.[index] ?? '';
      return table.decimalComma && isNumeric(name) ? now.replace('.', ',') : now;
    });
  };
  const header = [...table.header.cells, ...more];
  return success(likeBefore([header, ...rows.map(cellsOf)], text, table));
}

/** Each column's text of a row. */
function rowTexts(shop: Shop): Readonly<Record<Column, (row: PartRow) => string>> {
  const texts = partTexts(shop);
  const recorded = recordedColumns.map(({ name }) => name as PartText);
  const ofPart = Object.fromEntries(
    Object.entries(texts).map(([name, text]) => [name, ({ part }: PartRow) => text(part)]),
  ) as Record<PartText, (row: PartRow) => string>;
  return {
    ...ofPart,
    planned: ({ planned }) =>
      planned === null
        ? ''
        : plannedCell(
            recorded
              .map((column) => ({ column, text: texts[column](planned) }))
              .filter(({ column, text }) => column !== 'quantity' || text !== '1'),
          ),
  };
}

/** Each column's text of a part. */
export function partTexts(shop: Shop): Readonly<Record<PartText, (part: Part) => string>> {
  const size = (length: Tick): string => writeLength(length, shop.units, 'up');
  return {
    part: (part) => part.name,
    quantity: (part) => String(part.quantity),
    length: (part) => size(part.length),
    width: (part) => size(part.width),
    thickness: (part) => size(part.thickness),
    species: (part) => part.species,
    grain: (part) => (part.grain === 'along' ? '' : part.grain),
    quality: (part) => part.quality,
    show: (part) => (part.show === 0 ? '' : part.show === 1 ? 'yes' : String(part.show)),
    accept: (part) => acceptText(part.accept, shop.units),
    run: (part) => part.run ?? '',
    'left end': (part) => (part.leftEnd === 0 ? '' : String(part.leftEnd)),
    'right end': (part) => (part.rightEnd === 0 ? '' : String(part.rightEnd)),
    'extra length': ({ extraLength }) => (extraLength === undefined ? '' : size(extraLength)),
    'extra width': ({ extraWidth }) => (extraWidth === undefined ? '' : size(extraWidth)),
    'glue-up': (part) => (part.glueUp === 1 ? '' : String(part.glueUp)),
    value: (part) => (part.value === null ? '' : String(part.value)),
    board: ({ pin }) => (pin === null ? '' : pin.face === null ? pin.board : `${pin.board}:${pin.face}`),
    note: (part) => part.note,
  };
}

function isNumeric(name: Column): boolean {
  const extra = ['extra length', 'extra width'];
  return ['length', 'width', 'thickness', 'show', 'left end', 'right end', 'value', ...extra].includes(name);
}

/** `sound knot <= 1/2 in; stain`. */
function acceptText(accept: Part['accept'], unit: LengthUnit): string {
  return accept
    .map(({ kind, atMost }) => (atMost === null ? kind : `${kind} <= ${writeLength(atMost, unit, 'down')}`))
    .join('; ');
}
