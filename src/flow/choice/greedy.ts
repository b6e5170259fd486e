import { type Random, uniform } from '../../base/random/random.ts';
import { type Column, columnOf, columnWorth } from './column.ts';
import { type Pool, type Rest, addToPool, fitsRest } from './generate.ts';
import type { Instance } from './instance.ts';
import { isDone, spend } from './plan.ts';
import { type PriceAsk, priceInLots } from './price-together.ts';

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

/** Prices with a taste: every kind a little up or down. */
export function tastedPrices(prices: Float64Array, random: Random): Float64Array {
  const noise = 0.2 * uniform(random);
  return prices.map((price) => price * (1 + noise * (uniform(random) - 0.5)));
}

/** What a group's board would hold, and what that is worth for its money at most, nearly. Null: not asked yet. */
interface Offer {
  readonly column: Column | null;
  readonly rate: number;
}

/** How a greedy layout goes about it. */
export interface GreedyWay {
  /** Patterns among all positions listed, or a rough selection. */
  readonly fine: boolean;
  /**
   * Whether patterns met before do as long as they fit, and boards without one are taken to come out even: for worths that are
   * prices, where a bound has just been worked out.
   */
  readonly fromPool: boolean;
}

/** Boards asked at once when the best offers no longer fit. */
const askedAtOnce = 4;

/** A pattern met before does for one that no longer fits if it is worth so much of it. */
const nearlyAsGood = 0.97;

/** Patterns met so far, by group. */
function byGroup({ groups }: Instance, { columns }: Pool): Column[][] {
  const lists = groups.map((): Column[] => []);
  for (const column of columns) lists[column.group]!.push(column);
  return lists;
}

/** The best of a group's patterns that can be cut from what is left; none: as good as even. */
function offerMet(columns: readonly Column[], rest: Rest, cost: number, worth: Float64Array): Offer {
  let best: Offer = { column: null, rate: 0 };
  for (const column of columns) {
    const rate = rateOf(column, cost, worth);
    if (rate > best.rate && fitsRest(column, rest)) best = { column, rate };
  }
  return best.column === null ? { column: null, rate: 1 } : best;
}

/** Of the boards whose offer takes all that is left, the cheapest; null when there is none. */
function cheapestLast(free: readonly number[], offers: Map<number, Offer>, rest: Rest): number | null {
  const left = rest.demand.reduce((sum, count) => sum + Math.max(0, count), 0);
  let cheapest: Column | null = null;
  for (const g of free) {
    const { column } = offers.get(g)!;
    if (column?.placements.length !== left || !fitsRest(column, rest)) continue;
    if (cheapest === null || column.cost < cheapest.cost) cheapest = column;
  }
  return cheapest?.group ?? null;
}

function rateOf(column: Column, cost: number, worth: Float64Array): number {
  return columnWorth(column, worth) / (cost + 1e-9);
}

/**
 * A layout had at once: board by board, the pattern that uses its board's money best at the given worth.
 * What is left only shrinks, so a pattern made earlier says what its board is worth at most, nearly: only when it comes first and
 * no longer fits is the board's pattern made again.
 * Yields after each board, and after each few asked.
 * @param rest changed: what could not be placed   @param fixed what is laid so far, growing as it goes
 */
export function* greedy(
  instance: Instance,
  rest: Rest,
  pool: Pool,
  worth: Float64Array,
  { fine, fromPool }: GreedyWay,
  fixed: Column[] = [],
): Generator<void, Column[], void> {
  const offers = new Map<number, Offer>();
  const met = fromPool ? byGroup(instance, pool) : [];
  met.forEach((columns, g) => {
    if (rest.copies[g]! > 0) offers.set(g, offerMet(columns, rest, instance.groups[g]!.cost, worth));
  });
  const wanted = worth.slice();
  const offer = function* (groups: readonly number[]): Generator<void, void, void> {
    const asks = groups.map((g): PriceAsk => {
      const { pricer } = instance.groups[g]!;
      return { pricer, how: fine ? 'fine' : 'rough', worth: wanted, target: 0, slack: 0, caps: rest.demand };
    });
    const answers = yield* priceInLots(instance.price, asks);
    answers.forEach(({ pattern }, i) => {
      const g = groups[i]!;
      const group = instance.groups[g]!;
      const column = columnOf(g, pattern?.placements ?? [], group);
      offers.set(g, { column, rate: rateOf(column, group.cost, worth) });
    });
  };
  const isStale = (g: number): boolean => {
    const { column } = offers.get(g)!;
    return column === null || !fitsRest(column, rest);
  };
  const isMetAgain = (g: number): boolean => {
    const before = offers.get(g)!;
    const now = offerMet(met[g] ?? [], rest, instance.groups[g]!.cost, worth);
    if (now.column === null || before.column === null || now.rate < nearlyAsGood * before.rate) return false;
    offers.set(g, now);
    return true;
  };
  while (!isDone(rest)) {
    worth.forEach((w, k) => (wanted[k] = rest.demand[k]! > 0 ? w : 0));
    const free = [...instance.groups.keys()].filter((g) => rest.copies[g]! > 0);
    yield* offer(free.filter((g) => !offers.has(g)));
    let best: number;
    for (;;) {
      free.sort((a, b) => offers.get(b)!.rate - offers.get(a)!.rate || a - b);
      [best = -1] = free;
      if (best < 0 || offers.get(best)!.rate <= 0 || !isStale(best)) break;
      // Those next in line are asked with it: they would come first soon.
      const stale = fromPool ? free.slice(0, askedAtOnce).filter(isStale) : [best];
      yield* offer(stale.filter((g) => !isMetAgain(g)));
    }
    if (fromPool && best >= 0) best = cheapestLast(free, offers, rest) ?? best;
    const chosen = best < 0 ? null : offers.get(best)!;
    if (chosen === null || chosen.column === null || chosen.rate <= 0) break;
    addToPool(pool, chosen.column);
    fixed.push(chosen.column);
    spend(rest, chosen.column);
    yield;
  }
  return fixed;
}
