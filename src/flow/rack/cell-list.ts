import type { LengthUnit } from '../../base/units/read-length.ts';
import { ticks } from '../../base/units/tick.ts';
import { defectKinds, type Defect } from '../stock/defect.ts';
import { cellLength, lengthOfCell, placeOfCell } from './cell-length.ts';
import type { Made } from './entry.ts';

/**
 * Defects as one cell, each with its face, where it is along the piece and across it:
 * `sound knot A 10 in to 12 1/2 in, 3 in to 4 in; check through 0 in to 6 in, 2 in to 2 1/8 in`.
 */
export function cellDefects(defects: readonly Defect[], unit: LengthUnit): string {
  const length = (size: number): string => cellLength(ticks(size), unit);
  return defects
    .map(({ kind, face, x, y, length: long, width }) => {
      const along = `${length(x)} to ${length(x + long)}`;
      return `${kind} ${face} ${along}, ${length(y)} to ${length(y + width)}`;
    })
    .join('; ');
}

const defectForm = new RegExp(
  `^(${defectKinds.join('|')}) (A|B|through) (.+?) to (.+?), (.+?) to (.+)$`,
  'i',
);

/** Reads `cellDefects`; null when any of them cannot be read. An empty cell is a piece without defects. */
export function defectsOfCell(cell: string): readonly Defect[] | null {
  const read = listed(cell).map(defectOf);
  return read.some((defect) => defect === null) ? null : read.filter((defect) => defect !== null);
}

function defectOf(text: string): Defect | null {
  const match = defectForm.exec(text);
  if (match === null) return null;
  const [, kindText = '', faceText = '', ...ends] = match;
  const kind = defectKinds.find((known) => known === kindText.toLowerCase());
  const face = (['A', 'B', 'through'] as const).find(
    (known) => known.toLowerCase() === faceText.toLowerCase(),
  );
  const [from, to, low, high] = ends.map(placeOfCell);
  if (kind === undefined || face === undefined || !isSpan(from, to) || !isSpan(low, high)) return null;
  return { kind, face, x: from!, y: low!, length: to! - from!, width: high! - low! };
}

function isSpan(start: number | null | undefined, end: number | null | undefined): boolean {
  return typeof start === 'number' && typeof end === 'number' && start <= end;
}

/** What was cut from a board, as one cell: `2 of 30 1/2 in x 5 in x 3/4 in; 1 of 12 in x 5 in x 3/4 in`. */
export function cellMade(made: readonly Made[], unit: LengthUnit): string {
  return made
    .map(({ count, length, width, thickness }) => {
      const sizes = [length, width, thickness].map((size) => cellLength(size, unit));
      return `${count} of ${sizes.join(' x ')}`;
    })
    .join('; ');
}

const madeForm = /^(\d{1,6}) of (.+?) x (.+?) x (.+)$/i;

/** Reads `cellMade`; null when any of it cannot be read. */
export function madeOfCell(cell: string): readonly Made[] | null {
  const read = listed(cell).map(madeOne);
  return read.some((made) => made === null) ? null : read.filter((made) => made !== null);
}

function madeOne(text: string): Made | null {
  const match = madeForm.exec(text);
  if (match === null) return null;
  const [length, width, thickness] = match.slice(2).map(lengthOfCell);
  if (length === null || width === null || thickness === null) return null;
  if (length === undefined || width === undefined || thickness === undefined) return null;
  return { count: Number(match[1]), length, width, thickness };
}

function listed(cell: string): string[] {
  return cell
    .split(';')
    .map((text) => text.trim())
    .filter((text) => text !== '');
}
