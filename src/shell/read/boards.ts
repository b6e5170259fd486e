import {
  type Board,
  type CsvRow,
  type Shop,
  type Surface,
  type Tick,
  parseThickness,
  readLength,
  surfaceMeasures,
  usable,
  ticks,
  yardFeet,
} from '../../index.ts';
import {
  isThousandsOrDecimals,
  lengthField,
  neededText,
  numberField,
  numberText,
  uniqueName,
  wordField,
} from './field.ts';
import { plausible, question } from './implausible.ts';
import { type Field, type NamedTable, fieldOf, openTable } from './named-table.ts';
import { mostCopies } from './parts.ts';
import type { Reading } from './problem.ts';
import { totalArea } from './total-area.ts';

/** Columns of `boards.csv` and `yard.csv`, in the order they are written. */
export const boardColumns = [
  { name: 'board', needed: true },
  { name: 'quantity' },
  { name: 'length', needed: true },
  { name: 'width', needed: true },
  { name: 'thickness', needed: true },
  { name: 'surface' },
  { name: 'species' },
  { name: 'grade' },
  { name: 'price' },
  { name: 'look A' },
  { name: 'look B' },
  { name: 'tone' },
  { name: 'note' },
] as const;

/** A look that is not given lies in the middle. */
const middlingLook = 5;

/** A board as its row gives it: none of its defects yet, and possibly no copy of it at hand. */
export type BareBoard = Omit<Board, 'defects'>;

/** What a file of boards holds. */
export interface BoardList {
  /** The rows that could be read, used-up boards (quantity 0) too. */
  readonly boards: readonly BareBoard[];
  /** Every name, of faulty rows too. */
  readonly names: readonly string[];
}

/**
 * Reads `boards.csv` (or `yard.csv`). Sizes are rounded down: a board never grows.
 * A row with quantity 0 is a board that is used up; it stays known by name.
 * @returns null when not even the names could be read
 */
export function readBoards(file: string, text: string, shop: Shop): Reading<BoardList | null> {
  const { named, problems } = openTable(file, text, boardColumns, shop.units);
  if (named === null) return { value: null, problems };
  const seen = new Map<string, Field>();
  const area = totalArea('boards');
  const boards: Unpriced[] = [];
  for (const row of named.table.rows) {
    const label = fieldOf(named, row, 'board');
    const before = named.problems.length;
    const name = uniqueName(named, label, 'board', seen);
    const board = boardOf(named, row, name, shop);
    area.add(named, label, board);
    if (named.problems.length === before) boards.push(board);
  }
  questionSmallness(named, boards, shop);
  return {
    value: { boards: priced(boards), names: [...seen.keys()] },
    problems: named.problems,
    cautions: named.cautions,
  };
}

/** A board whose place in the file's tally is not known yet, nor what the yard charges for it. */
type Unpriced = Omit<BareBoard, 'yardFeet' | 'cost'> & { readonly cost: (yardFeet: number) => number };

/** The boards with what the yard tallies: in the order of the file, exact halves going down and up by turns. */
function priced(boards: readonly Unpriced[]): BareBoard[] {
  const measures = surfaceMeasures(
    boards.flatMap((board) => Array.from({ length: board.quantity }, () => board)),
  );
  let next = 0;
  return boards.map((board) => {
    const own = measures.slice(next, next + board.quantity);
    next += board.quantity;
    const feet = yardFeet(board.length, board.width, board.nominalInches, own);
    return { ...board, yardFeet: feet, cost: board.cost(feet) };
  });
}

function boardOf(named: NamedTable, row: CsvRow, name: string, shop: Shop): Unpriced {
  const field = (column: (typeof boardColumns)[number]['name']): Field => fieldOf(named, row, column);
  const size = (column: 'length' | 'width'): Tick =>
    lengthField(named, field(column), {
      side: 'down',
      range: 'more than 0',
      plausible: column === 'length' ? plausible.boardLength : plausible.boardWidth,
    });
  const look = (column: 'look A' | 'look B'): number =>
    numberField(named, field(column), {
      wanted: 'number',
      range: { least: 0, most: 10 },
      empty: middlingLook,
    });
  const before = named.problems.length;
  const length = size('length');
  const width = size('width');
  if (width > length && named.problems.length === before)
    question(named, field('width'), { why: 'wider than long' }, false);
  const surface = wordField<Surface>(named, field('surface'), ['rough', 'S2S', 'S3S', 'S4S'], 'rough');
  const thickness = thicknessField(named, field('thickness'), surface);
  return {
    name,
    quantity: numberField(named, field('quantity'), {
      wanted: 'whole number',
      range: { least: 0, most: mostCopies },
      empty: 1,
    }),
    length,
    width,
    ...thickness,
    surface,
    species: field('species').text,
    grade: field('grade').text,
    cost: costField(named, field('price'), shop),
    ...(field('price').text === '' ? { unpriced: true as const } : {}),
    lookA: look('look A'),
    lookB: look('look B'),
    tone: field('tone').text,
    note: field('note').text,
    origin: 'job',
  };
}

/** Stands in for a thickness that could not be read. */
const noThickness = { nominalThickness: '', nominalInches: 1, dressedThickness: ticks(0) };

/**
 * Quarters or a size. The text is kept in a form that means the same in any file: a decimal comma becomes a point, and
 * a bare number in a millimetre job gets its unit.
 */
function thicknessField(
  named: NamedTable,
  field: Field,
  surface: Surface,
): Pick<Board, 'nominalThickness' | 'nominalInches' | 'dressedThickness'> {
  const written = neededText(named, field);
  if (isThousandsOrDecimals(named, field, written)) return noThickness;
  const pointed = named.table.decimalComma ? written.replace(/(\d),(\d)/, '$1.$2') : written;
  const text = named.unit === 'mm' && /^[\d.]+$/.test(pointed) ? `${pointed} mm` : pointed;
  const reading = { unit: named.unit, decimalComma: false } as const;
  const thickness = parseThickness(text, surface, reading);
  if (thickness === null && written !== '') {
    const asLength = readLength(text, { ...reading, round: 'down' });
    const isDate = !asLength.ok && asLength.problems[0]?.kind === 'date';
    named.problems.push({ kind: 'no thickness', at: field.at(), text: written, isDate });
  }
  return {
    nominalThickness: text,
    nominalInches: thickness?.nominalInches ?? 1,
    dressedThickness: thickness?.dressed ?? ticks(0),
  };
}

/**
 * Money for one whole board, once its board feet by the yard's tally are known: as written, or per board foot
 * (`8.50/bf`), or at the shop's price.
 */
function costField(named: NamedTable, field: Field, shop: Shop): (yardFeet: number) => number {
  if (field.text === '') return (feet) => feet * shop.pricePerBoardFoot;
  const perFoot = /\s*\/\s*bf$/i;
  const amount = field.text.replace(perFoot, '').replace(/\p{Currency_Symbol}/gu, '');
  const price = numberText(named, field, amount, { wanted: 'price', range: { least: 0 } });
  return perFoot.test(field.text) ? (feet) => feet * price : () => price;
}

/** Questions the unit where no board at hand is large enough to cut anything from, or all are short as few boards are. */
function questionSmallness(
  named: NamedTable,
  boards: readonly Pick<BareBoard, 'quantity' | 'length' | 'width' | 'surface' | 'origin'>[],
  shop: Shop,
): void {
  const [first] = named.table.rows;
  const atHand = boards.filter(({ quantity }) => quantity > 0);
  if (first === undefined || atHand.length === 0 || named.problems.length > 0) return;
  const isUseless = atHand.every((board) => {
    const { length, width } = usable(board, shop);
    return length <= 0 || width <= 0;
  });
  const areShort = atHand.every(({ length }) => length < shop.shortestRip);
  if (isUseless || areShort)
    question(named, fieldOf(named, first, 'length'), { why: 'all too small', unit: named.unit }, isUseless);
}
