import { unreachable } from '../../base/result/unreachable.ts';
import type { LengthUnit } from '../../base/units/read-length.ts';
import { cellLength } from './cell-length.ts';
import { cellDefects, cellMade } from './cell-list.ts';
import { cellName, cellText } from './cell-text.ts';
import type { Deed, Entry } from './entry.ts';
import { endMark, type Cells, type JournalColumn } from './journal-columns.ts';
import type { RackPiece } from './piece.ts';

/**
 * One entry's cells. What a column does not concern stays empty.
 * @param position which line of its booking it is, from 1, and of how many
 */
export function entryCells(
  entry: Entry,
  position: { readonly line: number; readonly of: number },
  unit: LengthUnit,
): Cells {
  const { occasion, deed } = entry;
  return new Map<JournalColumn, string>([
    ['entry', entry.number === null ? '' : String(entry.number)],
    ['booking', entry.booking === null ? '' : String(entry.booking)],
    ['line', String(position.line)],
    ['of', String(position.of)],
    ['action', deed.action],
    ['time', cellText(occasion.time)],
    ['job', cellName(occasion.job)],
    ['layout', occasion.layout],
    ['note', cellText(entry.note)],
    ...deedCells(deed, unit),
    ['end', endMark],
  ]);
}

function deedCells(deed: Deed, unit: LengthUnit): [JournalColumn, string][] {
  switch (deed.action) {
    case 'put':
    case 'correct':
      return pieceCells(deed.piece, unit);
    case 'take':
      return [
        ['piece', cellName(deed.name)],
        ['from', deed.from],
        ['made', cellMade(deed.made, unit)],
        ...(deed.piece === null ? [] : pieceCells(deed.piece, unit)),
      ];
    case 'discard':
      return [['piece', cellName(deed.name)], ...(deed.piece === null ? [] : pieceCells(deed.piece, unit))];
    case 'undo':
      return [['undoes', String(deed.undoes)]];
    default:
      return unreachable(deed);
  }
}

/** The cells that describe a piece; those about its parent only when it has one. */
export function pieceCells(piece: RackPiece, unit: LengthUnit): [JournalColumn, string][] {
  const parent: [JournalColumn, string][] =
    piece.parent === null
      ? []
      : [
          ['parent', cellName(piece.parent.name)],
          ['parent x', cellLength(piece.parent.x, unit)],
          ['parent y', cellLength(piece.parent.y, unit)],
          ['turn', piece.parent.turn],
        ];
  return [
    ['piece', cellName(piece.name)],
    ['length', cellLength(piece.length, unit)],
    ['width', cellLength(piece.width, unit)],
    ['thickness', cellLength(piece.dressedThickness, unit)],
    // "4/4" alone would come back from a spreadsheet as the fourth of April.
    ['stock', `${cellText(piece.nominalThickness)} stock`],
    ['count as', `${piece.nominalInches} in`],
    ['species', cellText(piece.species)],
    ['grade', cellText(piece.grade)],
    ['tone', cellText(piece.tone)],
    ['look A', String(piece.lookA)],
    ['look B', String(piece.lookB)],
    ['cost', String(piece.cost)],
    ['defects', cellDefects([...piece.defects, ...piece.beside], unit)],
    ...parent,
  ];
}
