import { columnOf } from '../column.ts';
import { type Pool, type Rest, addToPool, worthOn } from '../generate.ts';
import type { Instance } from '../instance.ts';
import { type PriceAsk, withinCaps } from '../price-together.ts';
import { boardsAMove } from './move-prices.ts';

/** What a pass through all boards says at fixed prices. */
export interface BoundAt {
  /** A valid bound on every plan. */
  readonly bound: number;
  /** What a copy of each group is worth beyond its cost, at most; never below 0. */
  readonly groupPrice: Float64Array;
}

/**
 * The bound that prices π ≥ 0 give, none above its kind's penalty:
 *   Σ d π − Σ_g q_g · max(0, B_g(π) − c_g),
 * where B_g is at least what any pattern of g is worth at π: a plan's pieces, laid out or paid for, are worth Σ d π at least, and its boards
 * bring no more than Σ_g q_g · max(0, B_g − c_g) beyond what they cost (Lagrangian relaxation of the demand).
 * Yields after each few boards; ended early by `until` it returns null.
 * @param pool takes the patterns met, cut down to the caps   @param slack share of a board's cost by which B_g may be too high
 */
export function* boundAt(
  instance: Instance,
  rest: Rest,
  pool: Pool,
  prices: Float64Array,
  limits: { readonly slack: number; readonly until: number },
): Generator<void, BoundAt | null, void> {
  const { groups } = instance;
  let bound = 0;
  rest.demand.forEach((demand, k) => (bound += Math.max(0, demand) * prices[k]!));
  const groupPrice = new Float64Array(groups.length);
  const wanted = [...groups.keys()].filter((g) => rest.copies[g]! > 0);
  for (let from = 0; from < wanted.length; from += boardsAMove) {
    if (instance.meter.spent >= limits.until) return null;
    const now = wanted.slice(from, from + boardsAMove);
    const asks = now.map((g): PriceAsk => {
      const { pricer, cost } = groups[g]!;
      const slack = limits.slack * Math.max(0, cost);
      return { pricer, how: 'bound', worth: worthOn(instance, g, prices, rest), target: cost, slack };
    });
    instance.price(asks).forEach(({ bound: most, pattern }, i) => {
      const g = now[i]!;
      const group = groups[g]!;
      groupPrice[g] = Math.max(0, most - group.cost);
      bound -= rest.copies[g]! * groupPrice[g];
      if (pattern !== null) addToPool(pool, columnOf(g, withinCaps(pattern.placements, rest.demand), group));
    });
    yield;
  }
  return { bound, groupPrice };
}
