import { ticksPerInch, ticksPerMillimetre } from '../../../base/units/tick.ts';
import type { Shop } from '../../shop/shop.ts';

/**
 * A length (ticks) as a plain decimal in the job's unit, for sums and sorting in a spreadsheet: six places for
 * inches (1/64 in is 0.015625, exact), four for millimetres, no trailing noughts.
 */
export function decimalLength(length: number, shop: Shop): string {
  const isMetric = shop.units === 'mm';
  const perUnit = isMetric ? ticksPerMillimetre : ticksPerInch;
  return String(Number((length / perUnit).toFixed(isMetric ? 4 : 6)));
}

/** A column heading with the job's unit: `length in`, `length mm`. */
export function withUnitHead(head: string, shop: Shop): string {
  return `${head} ${shop.units}`;
}
