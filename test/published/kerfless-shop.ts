import { ticks } from '../../src/base/units/tick.ts';
import { type Shop, defaultShop } from '../../src/flow/shop/shop.ts';

const none = ticks(0);

/** The shop of the published problems: no kerf, no trims, anything may be ripped. */
export const kerflessShop: Shop = {
  ...defaultShop,
  ripKerf: none,
  crosscutKerf: none,
  endTrim: none,
  edgeTrim: none,
  shortestRip: none,
};
