import { type Rest, worthOn } from '../generate.ts';
import type { Instance } from '../instance.ts';
import type { PriceAsk } from '../price-together.ts';

/** Boards asked for the comparison. */
const asked = 16;

/**
 * Prices found in the rough, divided by how much more boards yield among all positions; none comes above its kind's penalty,
 * where it would bound nothing.
 * @param prices changed
 */
export function scaleToFine(instance: Instance, rest: Rest, prices: Float64Array): void {
  const scale = fineOverRough(instance, rest, prices);
  prices.forEach((price, k) => (prices[k] = Math.min(instance.kinds[k]!.penalty, price / scale)));
}

/**
 * How much more boards yield at these prices when all positions are looked at than in the rough: worth of fine patterns over
 * that of rough ones, on a few boards spread over the stock. Prices found in the rough are too high by that.
 */
function fineOverRough(instance: Instance, rest: Rest, prices: Float64Array): number {
  const wanted = [...instance.groups.keys()].filter((g) => rest.copies[g]! > 0);
  const step = Math.max(1, Math.floor(wanted.length / asked));
  const some = wanted.filter((_, i) => i % step === 0).slice(0, asked);
  const worthOf = (how: PriceAsk['how']): number[] => {
    const asks = some.map((g): PriceAsk => {
      const worth = worthOn(instance, g, prices, rest);
      return { pricer: instance.groups[g]!.pricer, how, worth, target: 0, slack: 0 };
    });
    return instance.price(asks).map(({ pattern }) => pattern?.value ?? 0);
  };
  const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0);
  const rough = sum(worthOf('rough'));
  const fine = sum(worthOf('fine'));
  return rough > 0 && fine > 0 ? fine / rough : 1;
}
