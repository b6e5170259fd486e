import { type Random, uniform } from '../../base/random/random.ts';
import { type Column, columnOf, columnWorth } from './column.ts';
import { type Pool, type Rest, addToPool, fitsRest } from './generate.ts';
import type { Instance } from './instance.ts';
import { isDone, spend } from './plan.ts';
import type { PriceAsk } from './price-together.ts';

/** Pieces worth their share of all the pieces' area; a run more, since few boards can hold one. */
export function areaWorth(instance: Instance): Float64Array {
  const area = Float64Array.from(
    instance.kinds,
    ({ length, width, members }) => length * width * (members.length > 1 ? 1.5 : 1),
  );
  const total = area.reduce((sum, a, k) => sum + a * instance.kinds[k]!.demand, 0) || 1;
  return area.map((a) => a / total);
}

/** The same with a taste: large pieces favoured more or less, every kind a little up or down. */
export function tastedWorth(instance: Instance, random: Random): Float64Array {
  const power = 0.95 + 0.4 * uniform(random);
  const noise = 0.1 * uniform(random);
  return areaWorth(instance).map((share) => share ** power * (1 + noise * (uniform(random) - 0.5)));
}

/** What a group's board would hold, and what that is worth for its money. */
interface Offer {
  column: Column;
  rate: number;
}

/**
 * A layout had at once: board by board, the pattern that uses its board's money best at the given worth.
 * What is left only shrinks, so a pattern made earlier says what its board is worth at most, nearly: only when it comes first and
 * no longer fits is the board's pattern made again.
 * Yields after each board.
 * @param rest changed: what could not be placed   @param fine patterns among all positions listed   @param fixed what is laid so far, growing as it goes
 */
export function* greedy(
  instance: Instance,
  rest: Rest,
  pool: Pool,
  worth: Float64Array,
  fine: boolean,
  fixed: Column[] = [],
): Generator<void, Column[], void> {
  const offers = new Map<number, Offer>();
  const wanted = worth.slice();
  const offer = (groups: readonly number[]): void => {
    const asks = groups.map((g): PriceAsk => {
      const { pricer } = instance.groups[g]!;
      return { pricer, how: fine ? 'fine' : 'rough', worth: wanted, target: 0, slack: 0, caps: rest.demand };
    });
    instance.price(asks).forEach(({ pattern }, i) => {
      const g = groups[i]!;
      const group = instance.groups[g]!;
      const column = columnOf(g, pattern?.placements ?? [], group);
      offers.set(g, { column, rate: columnWorth(column, worth) / (group.cost + 1e-9) });
    });
  };
  while (!isDone(rest)) {
    worth.forEach((w, k) => (wanted[k] = rest.demand[k]! > 0 ? w : 0));
    const free = [...instance.groups.keys()].filter((g) => rest.copies[g] !== 0);
    offer(free.filter((g) => !offers.has(g)));
    let best: Offer | null;
    for (;;) {
      best = null;
      for (const g of free) {
        const here = offers.get(g)!;
        if (here.rate > (best?.rate ?? 0)) best = here;
      }
      const first = best as Offer | null;
      if (first === null || fitsRest(first.column, rest)) break;
      offer([first.column.group]);
    }
    const chosen = best as Offer | null;
    if (chosen === null) break;
    addToPool(pool, chosen.column);
    fixed.push(chosen.column);
    spend(rest, chosen.column);
    yield;
  }
  return fixed;
}
