import { inches } from '../../base/units/tick.ts';
import type { Shop } from '../shop/shop.ts';
import type { Part } from './part.ts';

/** What jointing its edges takes off each strip of a glue-up: 1/16 in an edge. Common practice, no source. */
export const jointingAllowance = inches(1 / 8);

/**
 * The blank to be cut for one copy of a part, grain along `length`: finished size plus the shop's allowances.
 * A glue-up of n strips takes n equal strips, each wider by the jointing allowance; a share that is not whole is rounded up.
 */
export function blankOf(part: Part, shop: Shop, strips: number): { length: number; width: number } {
  const width = part.width + shop.widthAllowance;
  return {
    length: part.length + shop.lengthAllowance,
    width: strips === 1 ? width : Math.ceil(width / strips) + jointingAllowance,
  };
}
