import type { Part } from '../parts/part.ts';
import type { Shop } from '../shop/shop.ts';
import type { Board } from './board.ts';

/** All that a layout is made from: the parts to cut, the boards at hand and the shop's rules. */
export interface Job {
  readonly name: string;
  readonly shop: Shop;
  readonly parts: readonly Part[];
  readonly boards: readonly Board[];
}
