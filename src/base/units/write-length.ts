import { mixedNumber } from './format-length.ts';
import { type LengthUnit, readLength } from './read-length.ts';
import type { RoundingSide } from './rounded-quotient.ts';
import { type Tick, ticksPerInch, ticksPerMillimetre } from './tick.ts';

const finestFraction = 64;
/** 0.0001 in is 0.81 of a tick and 0.001 mm is 0.32 of one, so this many decimals always name a tick apart. */
const enoughDecimals = 4;

/**
 * A length for a file: the shortest text that reads back as this very length when read in the same unit and rounded to
 * the same side. Inches as a fraction to 1/64 where that is exact, else as a decimal; millimetres as a decimal.
 * A fraction below one inch carries its unit (`3/4 in`), since a spreadsheet takes a bare `3/4` for a day of the year.
 * @example writeLength(inches(63.5), 'in', 'up') // '63 1/2'
 */
export function writeLength(length: Tick, unit: LengthUnit, side: RoundingSide): string {
  const sign = length < 0 ? '-' : '';
  const size = Math.abs(length);
  const ticksPerUnit = unit === 'mm' ? ticksPerMillimetre : ticksPerInch;
  if (unit === 'in' && (size * finestFraction) % ticksPerInch === 0) {
    const fraction = mixedNumber((size * finestFraction) / ticksPerInch, finestFraction);
    return `${sign}${fraction}${/^\d+\//.test(fraction) ? ' in' : ''}`;
  }
  for (let decimals = 0; decimals <= enoughDecimals; decimals += 1) {
    const text = decimalOnSide(length, ticksPerUnit, decimals, side);
    const back = readLength(text, { unit, decimalComma: false, round: side });
    if (back.ok && back.value === length) return text;
  }
  throw new Error(`no decimal names ${length} ticks in ${unit}`);
}

/**
 * The decimal nearest to the length among those that the side's rounding leads back to it: a length read upwards was
 * written a little smaller, one read downwards a little larger.
 */
function decimalOnSide(length: Tick, ticksPerUnit: number, decimals: number, side: RoundingSide): string {
  const scale = 10 ** decimals;
  const scaled = (length * scale) / ticksPerUnit;
  const steps =
    side === 'nearest' ? Math.round(scaled) : side === 'up' ? Math.floor(scaled) : Math.ceil(scaled);
  return String(Number((steps / scale).toFixed(decimals)));
}
