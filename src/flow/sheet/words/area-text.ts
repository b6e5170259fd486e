import { ticksPerInch, ticksPerMillimetre } from '../../../base/units/tick.ts';
import type { Shop } from '../../shop/shop.ts';
import { decimal } from './number-text.ts';

/** An area (square ticks) for people: square feet or square metres, two decimals. */
export function areaText(area: number, shop: Shop): string {
  if (shop.units === 'mm') return `${decimal(area / (1000 * ticksPerMillimetre) ** 2, 3)} m²`;
  return `${decimal(area / (12 * ticksPerInch) ** 2, 2)} sq ft`;
}
