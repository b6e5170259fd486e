import { ticks } from '../../base/units/tick.ts';
import { blankSize } from '../shop/blank-size.ts';
import type { Shop } from '../shop/shop.ts';
import type { Part } from './part.ts';

/** The blank to be cut for one copy of a part, whole or as one of so many strips: see `blankSize`. */
export function blankOf(part: Part, shop: Shop, strips: number): { length: number; width: number } {
  return blankSize(part, shop, strips);
}

/** A part whose whole blank is this one: how a strip or a share of a part is asked for. */
export function partWithBlank(part: Part, shop: Shop, blank: { length: number; width: number }): Part {
  const none = ticks(0);
  const bare = { ...part, length: none, width: none, extraLength: none, extraWidth: none };
  const allowed = blankOf(bare, shop, 1);
  return { ...bare, length: ticks(blank.length - allowed.length), width: ticks(blank.width - allowed.width) };
}
