import { formatLength, type LengthStyle } from '../../base/units/format-length.ts';
import { seenCharacters, withoutControls } from '../../base/text/terminal-width.ts';
import { boardFeet } from '../../trade/board-feet.ts';
import type { Held } from './fold.ts';

const head = [
  'piece',
  'length',
  'width',
  'thick',
  'stock',
  'species',
  'tone',
  'flaws',
  'cost',
  'from',
] as const;
const numbers: ReadonlySet<string> = new Set(['flaws', 'cost']);
const widestCell = 28;

/** The pieces as a table for the terminal, sizes in the stated unit; nothing of it can steer the terminal. */
export function rackTable(pieces: readonly Held[], style: LengthStyle): string {
  if (pieces.length === 0) return '';
  const rows = pieces.map(({ piece, job }) => [
    piece.name,
    formatLength(piece.length, style),
    formatLength(piece.width, style),
    formatLength(piece.dressedThickness, style),
    piece.nominalThickness,
    piece.species,
    piece.tone,
    piece.defects.length === 0 ? '' : String(piece.defects.length),
    piece.cost.toFixed(2),
    piece.parent === null ? job : `${piece.parent.name}${job === '' ? '' : ` of ${job}`}`,
  ]);
  const cells = [head, ...rows].map((row) => row.map(shortCell));
  const widths = head.map((_, column) => Math.max(...cells.map((row) => columnsOf(row[column] ?? ''))));
  return cells
    .map(
      (row) =>
        row
          .map((cell, column) => padded(cell, column, widths))
          .join('  ')
          .trimEnd() + '\n',
    )
    .join('');
}

function padded(cell: string, column: number, widths: readonly number[]): string {
  const room = ' '.repeat(Math.max(0, (widths[column] ?? 0) - columnsOf(cell)));
  return numbers.has(head[column] ?? '') ? room + cell : cell + room;
}

function shortCell(text: string): string {
  const seen = seenCharacters(withoutControls(text.slice(0, 8 * widestCell)));
  if (seen.length <= widestCell) return seen.map((one) => one.text).join('');
  return `${seen
    .slice(0, widestCell - 1)
    .map((one) => one.text)
    .join('')}…`;
}

function columnsOf(text: string): number {
  return seenCharacters(text).reduce((sum, { columns }) => sum + columns, 0);
}

/** How many pieces, how much wood, what they cost by the ledger. */
export function rackTotals(pieces: readonly Held[]): string {
  const feet = pieces.reduce(
    (sum, { piece }) => sum + boardFeet(piece.length, piece.width, piece.nominalInches),
    0,
  );
  const cost = pieces.reduce((sum, { piece }) => sum + piece.cost, 0);
  const count = pieces.length === 1 ? '1 piece' : `${pieces.length} pieces`;
  return pieces.length === 0
    ? 'no piece'
    : `${count}, ${feet.toFixed(1)} BF measured, ${cost.toFixed(2)} by the ledger`;
}
