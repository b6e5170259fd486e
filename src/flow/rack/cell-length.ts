import { readLength, type LengthUnit } from '../../base/units/read-length.ts';
import { ticks, ticksPerInch, type Tick } from '../../base/units/tick.ts';
import { writeLength } from '../../base/units/write-length.ts';

const plainInches = /^(\d{1,5})(?: (\d{1,2})\/(\d{1,2}))? in$/;

/**
 * A length as the journal holds it: exact, and always with its unit, since shops of either unit may share a rack and
 * since a spreadsheet takes a bare `3/4` for a date.
 * @param unit the one the writing shop works in
 * @example cellLength(inches(31.5), 'in') // '31 1/2 in'
 */
export function cellLength(length: Tick, unit: LengthUnit): string {
  const written = writeLength(length, unit, 'nearest');
  return written.endsWith(unit) ? written : `${written} ${unit}`;
}

/**
 * Reads a length of the journal, or one that somebody typed in any form a job file may have; a bare number is inches.
 * @returns null when the text is no length, or less than nothing
 */
export function lengthOfCell(cell: string): Tick | null {
  const length = placeOfCell(cell);
  return length === null || length < 0 ? null : length;
}

/** The same for a place, which may lie before the piece's end or edge. */
export function placeOfCell(cell: string): Tick | null {
  // The plain form fills most of a journal: worked without big numbers, so that ten thousand lines load at once.
  const plain = plainInches.exec(cell);
  if (plain !== null) {
    const [, whole = '0', over = '0', under = '1'] = plain;
    const ticksHere = Number(whole) * ticksPerInch + (Number(over) * ticksPerInch) / Number(under);
    if (Number.isSafeInteger(ticksHere)) return ticks(ticksHere);
  }
  // A comma is a spreadsheet's decimal sign here, and a point stays one: a journal has no thousands.
  const pointed = cell.replace(',', '.');
  const read = readLength(pointed, { unit: 'in', decimalComma: false, round: 'nearest' });
  return read.ok ? read.value : null;
}
