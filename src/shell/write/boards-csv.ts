import { type Board, type Shop, type Tick, writeLength } from '../../index.ts';
import { boardColumns } from '../read/boards.ts';
import { tableText } from './table-text.ts';

/** The text of `boards.csv`; defects have a file of their own (`writeDefectsCsv`). Each price is for one whole board. */
export function writeBoardsCsv(boards: readonly Board[], shop: Shop): string {
  const size = (length: Tick): string => writeLength(length, shop.units, 'down');
  return tableText(boardColumns, boards, {
    board: (board) => board.name,
    quantity: (board) => String(board.quantity),
    length: (board) => size(board.length),
    width: (board) => size(board.width),
    thickness: (board) => board.nominalThickness,
    surface: (board) => board.surface,
    species: (board) => board.species,
    grade: (board) => board.grade,
    price: (board) => priceText(board.cost),
    'look A': (board) => String(board.lookA),
    'look B': (board) => String(board.lookB),
    tone: (board) => board.tone,
    note: (board) => board.note,
  });
}

/** A price for a file: what is paid is whole cents. */
export function priceText(cost: number): string {
  return String(Math.round(100 * cost) / 100);
}
