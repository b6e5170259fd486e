import { type Random, uniform } from '../../base/random/random.ts';
import { type Column, columnOf, columnWorth } from './column.ts';
import { type Pool, type Rest, addToPool, fitsRest } from './generate.ts';
import type { Instance } from './instance.ts';
import { isDone, spend } from './plan.ts';

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

/**
 * A layout had at once: board by board, the pattern that uses its board's money best at the given worth.
 * A group's pattern is made again only when what is left no longer holds it; what remains only shrinks, so an old
 * pattern that still fits is hardly worse than a new one would be.
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
  const offers = new Array<Column | null>(instance.groups.length).fill(null);
  while (!isDone(rest)) {
    const wanted = worth.map((w, k) => (rest.demand[k]! > 0 ? w : 0));
    let best: Column | null = null;
    let most = 0;
    instance.groups.forEach((group, g) => {
      if (rest.copies[g] === 0) return;
      let offer = offers[g] ?? null;
      if (offer === null || !fitsRest(offer, rest)) {
        offer = columnOf(g, group.pricer.pattern(wanted, rest.demand, 0, fine).placements, group);
        offers[g] = offer;
      }
      const rate = columnWorth(offer, worth) / (group.cost + 1e-9);
      if (rate <= most) return;
      most = rate;
      best = offer;
    });
    if (best === null) break;
    addToPool(pool, best);
    fixed.push(best);
    spend(rest, best);
    yield;
  }
  return fixed;
}
