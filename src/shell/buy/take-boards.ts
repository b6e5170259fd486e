import { join } from 'node:path';
import {
  type Board,
  type CsvTable,
  type Result,
  type Shop,
  failure,
  readCsv,
  success,
  writeLength,
} from '../../index.ts';
import { boardColumns } from '../read/boards.ts';
import { jobFileNames } from '../read/job.ts';
import { plainNumber } from '../read/field.ts';
import { folded } from '../read/named-table.ts';
import { readTextFile } from '../read/text-file.ts';
import { writeAllAtomically } from '../write/atomically.ts';
import { priceText, writeBoardsCsv } from '../write/boards-csv.ts';
import { likeBefore } from '../write/like-before.ts';
import type { Problem } from '../print-problem.ts';

type Column = (typeof boardColumns)[number]['name'];

/**
 * Writes boards that were taken at the yard into `boards.csv`: a new row for each, or more copies of a row that is there
 * by the same name. The file is written whole or not at all; its order of columns, its delimiter, line ends and mark
 * stay as they were. Their defects stand in `defects.csv` already, under the same names, for a yard board's defects are
 * marked there too.
 * @param taken rows of the yard, `quantity` being the copies taken and `cost` the price paid for each
 */
export async function takeBoards(
  folder: string,
  taken: readonly Board[],
  shop: Shop,
  shown: string,
): Promise<Result<void, Problem>> {
  const path = join(folder, jobFileNames.boards);
  const text = await readTextFile(path, shown);
  if (!text.ok) return text;
  const written =
    text.value === null ? success(writeBoardsCsv(taken, shop)) : withBoards(shown, text.value, taken, shop);
  if (!written.ok) return written;
  return writeAllAtomically([{ path, file: shown, text: written.value }]);
}

/** The text of a `boards.csv` with the boards added. Touches no disk. */
export function withBoards(
  file: string,
  text: string,
  taken: readonly Board[],
  shop: Shop,
): Result<string, Problem> {
  const read = readCsv(file, text);
  if (!read.ok) return failure(read.problems);
  const table = read.value;
  const header = [...table.header.cells];
  const rows = table.rows.map(({ cells }) => [...cells]);
  const columnOf = (name: Column): number => header.findIndex((cell) => folded(cell) === folded(name));
  for (const board of taken) {
    const known = rows.find((row) => row[columnOf('board')]?.trim() === board.name);
    const cells = known === undefined ? cellsOf(board, shop, table) : null;
    const wanted =
      cells === null
        ? (['quantity'] as const)
        : [...cells].filter(([, { says }]) => says).map(([name]) => name);
    for (const name of wanted) {
      if (columnOf(name) >= 0) continue;
      header.push(name);
      for (const row of rows) row.push('');
    }
    if (known !== undefined) {
      const before = known[columnOf('quantity')]?.trim() ?? '';
      const owned = before === '' ? 1 : plainNumber(before, table.decimalComma);
      if (owned === null) throw new Error(`a quantity that was read before cannot be read: ${before}`);
      known[columnOf('quantity')] = String(owned + board.quantity);
    } else if (cells !== null) {
      const names = header.map(
        (cell) => boardColumns.find(({ name }) => folded(name) === folded(cell))?.name,
      );
      rows.push(names.map((name) => (name === undefined ? '' : (cells.get(name)?.text ?? ''))));
    }
  }
  return success(likeBefore([header, ...rows], text, table));
}

/** A board's cells by column, and whether each says more than its column's default would. */
function cellsOf(
  board: Board,
  shop: Shop,
  { decimalComma }: CsvTable,
): ReadonlyMap<Column, { readonly text: string; readonly says: boolean }> {
  const number = (written: string): string => (decimalComma ? written.replace('.', ',') : written);
  const cells: [Column, string, byDefault?: string][] = [
    ['board', board.name],
    ['quantity', String(board.quantity), '1'],
    ['length', number(writeLength(board.length, shop.units, 'down'))],
    ['width', number(writeLength(board.width, shop.units, 'down'))],
    ['thickness', number(board.nominalThickness)],
    ['surface', board.surface, 'rough'],
    ['species', board.species, ''],
    ['grade', board.grade, ''],
    ['price', number(priceText(board.cost))],
    ['look A', number(String(board.lookA)), '5'],
    ['look B', number(String(board.lookB)), '5'],
    ['tone', board.tone, ''],
    ['note', board.note, ''],
  ];
  return new Map(cells.map(([name, text, byDefault]) => [name, { text, says: text !== byDefault }]));
}
