import { ticks } from '../../base/units/tick.ts';
import { lengthOfCell } from './cell-length.ts';
import { contains } from '../../base/geometry/rectangle.ts';
import { parted } from './knots-beside.ts';
import { defectsOfCell, madeOfCell } from './cell-list.ts';
import { textOfCell } from './cell-text.ts';
import { actions, type Deed, type Entry } from './entry.ts';
import type { Cells } from './journal-columns.ts';
import type { RackPiece } from './piece.ts';
import { turns } from './turn.ts';

/** An entry, if one could be made of the cells, and what was wrong with them: both, when the damage does no harm. */
export interface ReadEntry {
  readonly entry: Entry | null;
  readonly faults: readonly string[];
}

/**
 * Makes an entry of one line's cells. What an action does not need may be missing or damaged: a take still takes
 * when nobody can read how long the piece was. Each fault is named in words.
 * @param line physical line, from 1
 */
export function readEntry(cells: Cells, line: number): ReadEntry {
  const faults: string[] = [];
  const deed = readDeed(cells, faults);
  if (deed === null) return { entry: null, faults };
  const text = (column: 'time' | 'job' | 'note'): string => textOfCell(cells.get(column) ?? '');
  const entry: Entry = {
    number: wholeNumber(cells.get('entry')),
    booking: wholeNumber(cells.get('booking')),
    occasion: { time: text('time'), job: text('job'), layout: (cells.get('layout') ?? '').trim() },
    deed,
    note: text('note'),
    line,
  };
  return { entry, faults };
}

/** A whole number from 1, as a spreadsheet may have written it (`12`, `12.0`); null when there is none. */
export function wholeNumber(cell: string | undefined): number | null {
  if (cell === undefined) return null;
  const match = /^\s*(\d{1,9})(?:[.,]0+)?\s*$/.exec(cell);
  return match === null ? null : Number(match[1]);
}

function readDeed(cells: Cells, faults: string[]): Deed | null {
  const word = (cells.get('action') ?? '').trim().toLowerCase();
  const action = actions.find((known) => known === word);
  if (action === undefined) {
    faults.push(word === '' ? 'no action' : `no action is called ${word}`);
    return null;
  }
  if (action === 'undo') return readUndo(cells, faults);
  const name = textOfCell(cells.get('piece') ?? '');
  if (name.trim() === '') {
    faults.push('no piece is named');
    return null;
  }
  // A take or discard by hand needs to name its piece only.
  const sizeGiven = (['length', 'width'] as const).some((column) => (cells.get(column) ?? '').trim() !== '');
  const pieceFaults: string[] = [];
  const needed = action === 'put' || action === 'correct' || sizeGiven;
  const piece = needed ? readPiece(cells, name, pieceFaults) : null;
  faults.push(...pieceFaults);
  const whole = pieceFaults.length === 0 ? piece : null;
  if (action === 'discard') return { action, name, piece: whole };
  if (action === 'take') {
    const from = (cells.get('from') ?? '').trim().toLowerCase() === 'job' ? 'job' : 'rack';
    return { action, from, name, piece: whole, made: readMade(cells, faults) };
  }
  return whole === null ? null : { action, piece: whole };
}

function readUndo(cells: Cells, faults: string[]): Deed | null {
  const undoes = wholeNumber(cells.get('undoes'));
  if (undoes === null) faults.push('it does not say which booking it undoes');
  return undoes === null ? null : { action: 'undo', undoes };
}

function readMade(cells: Cells, faults: string[]): NonNullable<ReturnType<typeof madeOfCell>> {
  const made = madeOfCell(cells.get('made') ?? '');
  if (made === null) faults.push('what was made of it cannot be read');
  return made ?? [];
}

function readPiece(cells: Cells, name: string, faults: string[]): RackPiece {
  const size = (column: 'length' | 'width' | 'thickness', missing: number | null): number => {
    const cell = (cells.get(column) ?? '').trim();
    const read = cell === '' ? missing : lengthOfCell(cell);
    if (read === null || (read <= 0 && column !== 'thickness'))
      faults.push(`its ${column} "${cell}" is no length`);
    return read ?? 0;
  };
  const length = ticks(size('length', null));
  const width = ticks(size('width', null));
  const dressedThickness = ticks(size('thickness', null));
  const defects = defectsOfCell(cells.get('defects') ?? '');
  if (defects === null) faults.push('its defects cannot be read');
  const { on, beside } = parted(defects ?? [], { length, width });
  if (!on.every((one) => contains({ x: 0, y: 0, length, width }, one)))
    faults.push('a defect lies past its end or edge');
  const word = (column: 'species' | 'grade' | 'tone' | 'stock'): string =>
    textOfCell(cells.get(column) ?? '').trim();
  return {
    name,
    length,
    width,
    dressedThickness,
    nominalThickness: word('stock').replace(/ stock$/, ''),
    nominalInches: decimal(cells.get('count as')?.replace(/\s*in\s*$/i, ''), 1, 'count as', faults),
    species: word('species'),
    grade: word('grade'),
    tone: word('tone'),
    lookA: decimal(cells.get('look A'), 5, 'look A', faults),
    lookB: decimal(cells.get('look B'), 5, 'look B', faults),
    cost: decimal(cells.get('cost'), 0, 'cost', faults),
    defects: on,
    beside,
    parent: readParent(cells, faults),
  };
}

function readParent(cells: Cells, faults: string[]): RackPiece['parent'] {
  const name = textOfCell(cells.get('parent') ?? '');
  if (name === '') return null;
  const turnWord = (cells.get('turn') ?? '').trim().toLowerCase();
  const turn = turnWord === '' ? 'as cut' : turns.find((known) => known === turnWord);
  const [x, y] = (['parent x', 'parent y'] as const).map((column) =>
    lengthOfCell((cells.get(column) ?? '').trim()),
  );
  if (turn === undefined || typeof x !== 'number' || typeof y !== 'number') {
    faults.push('where it lay on its parent cannot be read');
    return null;
  }
  return { name, x, y, turn };
}

function decimal(cell: string | undefined, missing: number, column: string, faults: string[]): number {
  const text = (cell ?? '').trim().replace(',', '.');
  if (text === '') return missing;
  const read = Number(text);
  if (/^\d/.test(text) && Number.isFinite(read)) return read;
  faults.push(`its ${column} "${text}" is no number`);
  return missing;
}
