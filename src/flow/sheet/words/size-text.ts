import { formatLength, formatLengthWithUnit } from '../../../base/units/format-length.ts';
import { ticks } from '../../../base/units/tick.ts';
import type { Shop } from '../../shop/shop.ts';

/** A length (ticks) in the job's unit, without the unit, as on a drawing whose unit is stated once. */
export function bare(length: number, shop: Shop): string {
  return formatLength(ticks(length), shop);
}

/** A length (ticks) in the job's unit, with it. */
export function withUnit(length: number, shop: Shop): string {
  return formatLengthWithUnit(ticks(length), shop);
}

/**
 * Length × width, ticks, in the job's unit.
 * @example sizeText({ length: inches(60.5), width: inches(5) }, shop) // '60 1/2 × 5'
 */
export function sizeText(size: { readonly length: number; readonly width: number }, shop: Shop): string {
  return `${bare(size.length, shop)} × ${bare(size.width, shop)}`;
}

/** The unit in words, for a heading. */
export function unitWord(shop: Shop): string {
  return shop.units === 'mm' ? 'millimetres' : 'inches';
}
