import { keepFound } from '../found.ts';
import { type Pool, type Rest, worthOn } from '../generate.ts';
import type { Instance } from '../instance.ts';
import { type PriceAsk, priceInLots } from '../price-together.ts';
import { dueFor } from '../wanted.ts';

/** What a pass through all boards says at fixed prices. */
export interface BoundAt {
  /** A valid bound on every plan. */
  readonly bound: number;
  /** What a copy of each group is worth beyond its cost, at most; never below 0. */
  readonly groupPrice: Float64Array;
}

/** How easily a board's bound is had. */
export interface BoundEase {
  /** Share of the board's cost by which it may be too high. */
  readonly slack: number;
  /** Section starts after which it is taken as it stands; Infinity: as many as it takes. */
  readonly mostStarts: number;
}

/**
 * The bound that prices π ≥ 0 give, none above its kind's penalty:
 *   Σ d π − Σ_g q_g · max(0, B_g(π) − c_g),
 * where B_g is at least what any pattern of g is worth at π: a plan's pieces, laid out or paid for, are worth Σ d π at least, and its boards
 * bring no more than Σ_g q_g · max(0, B_g − c_g) beyond what they cost (Lagrangian relaxation of the demand).
 * Yields after each few boards.
 * @param pool takes the patterns met, cut down to the caps
 * @param ease how far B_g may be too high
 */
export function* boundAt(
  instance: Instance,
  rest: Rest,
  pool: Pool,
  prices: Float64Array,
  ease: BoundEase,
): Generator<void, BoundAt, void> {
  const { groups } = instance;
  let bound = dueFor(instance, rest, prices);
  const groupPrice = new Float64Array(groups.length);
  const wanted = [...groups.keys()].filter((g) => rest.copies[g]! > 0);
  const asks = wanted.map((g): PriceAsk => {
    const { pricer, cost } = groups[g]!;
    return {
      pricer,
      how: 'bound',
      worth: worthOn(instance, g, prices, rest),
      target: cost,
      slack: ease.slack * Math.max(0, cost),
      mostStarts: ease.mostStarts,
    };
  });
  const answers = yield* priceInLots(instance.price, asks);
  answers.forEach(({ bound: most }, i) => {
    const g = wanted[i]!;
    groupPrice[g] = Math.max(0, most - groups[g]!.cost);
    bound -= rest.copies[g]! * groupPrice[g];
  });
  keepFound(instance, rest, pool, wanted, answers);
  return { bound, groupPrice };
}
