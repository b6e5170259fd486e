import type { Rest } from './generate.ts';
import type { Alternative, Instance, Way } from './instance.ts';

/** What a master is to cover. */
export interface Wanted {
  /** Pieces of each kind; of a way's kind those of the copies that must be made so, less those laid already. */
  readonly demand: readonly number[];
  /** The copies left to be made in whichever way. */
  readonly alternatives: readonly Alternative[];
}

function fixedPieces({ strips, least, laid }: Way): number {
  return strips * least - laid;
}

/** What a master is to cover: pieces of kinds that are wanted for themselves, and copies of alternatives. */
export function wantedOf(instance: Instance, rest: Rest): Wanted {
  const all = instance.alternatives ?? [];
  const demand = Array.from(rest.demand);
  const alternatives = all.map(({ copies, ways }): Alternative => {
    for (const way of ways) demand[way.kind] = fixedPieces(way);
    const fixed = ways.reduce((sum, { least }) => sum + least, 0);
    return {
      copies: Math.max(0, copies - fixed),
      ways: ways.map((way) => ({ ...way, least: 0, most: way.most - way.least, laid: 0 })),
    };
  });
  return { demand, alternatives };
}

/** Worth of the copies at these prices, each made in the cheapest way that is not used up yet. */
function cheapest({ copies, ways }: Alternative, kindPrice: Float64Array): number {
  const prices = ways.map(({ kind, strips, most }) => ({ price: strips * kindPrice[kind]!, most }));
  prices.sort((a, b) => a.price - b.price);
  let left = copies;
  let sum = 0;
  for (const { price, most } of prices) {
    const take = Math.min(left, most);
    sum += take * price;
    left -= take;
  }
  return sum;
}

/** What all that is wanted is worth at these prices, each copy of an alternative as much as in the cheapest way left to it. */
export function dueFor(instance: Instance, rest: Rest, kindPrice: Float64Array): number {
  const { demand, alternatives } = wantedOf(instance, rest);
  const plain = demand.reduce((sum, each, k) => sum + each * kindPrice[k]!, 0);
  return alternatives.reduce((sum, alternative) => sum + cheapest(alternative, kindPrice), plain);
}
