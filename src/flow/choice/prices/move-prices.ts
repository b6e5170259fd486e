import { type Random, shuffle } from '../../../base/random/random.ts';
import { type Column, columnWorth } from '../column.ts';
import { mixed } from '../duals.ts';
import { columnFound } from '../found.ts';
import { type Pool, type Rest, addToPool, worthOn } from '../generate.ts';
import type { Instance } from '../instance.ts';
import type { PriceAsk } from '../price-together.ts';
import { moveOnce } from './move-once.ts';
import { pricesAmongMet } from './prices-among-met.ts';

/** Boards asked between two moves of the prices. */
const boardsAMove = 8;

/** By what share of its board's cost a pattern may fall short of the best: prices move by many boards, none matters alone. */
const goodEnough = 0.02;

/** Share that the prices at which the patterns met come out have in those of the next pass. */
const shareOfMet = 0.6;

export interface Moves {
  /** Passes through all boards. */
  readonly passes: number;
  /** By what share of itself the price of a kind nobody cuts rises in the first pass. */
  readonly step: number;
  /** What the step is multiplied with from pass to pass. */
  readonly decay: number;
  /** Patterns from all positions listed, or from a rough selection. */
  readonly fine: boolean;
  /** Meter reading that ends it. */
  readonly until: number;
}

/**
 * Moves prices towards those of the best bound, the dual of the master, without a master: an incremental subgradient method
 * (Nedić and Bertsekas 2001) with steps in proportion to the prices. A few boards are asked what they would cut at these prices;
 * kinds they cut more of than their share of the demand become cheaper, others dearer; then the next few boards. A pass through all
 * boards so moves the prices many times, where a master's would move once, and its simplex is dear on hundreds of boards.
 * Yields after each move.
 * @param prices changed, one for each kind   @param pool takes the patterns met that pay
 */
export function* movePrices(
  instance: Instance,
  rest: Rest,
  pool: Pool,
  prices: Float64Array,
  random: Random,
  moves: Moves,
): Generator<void, void, void> {
  let { step } = moves;
  const slots = rest.copies.reduce((sum, copies) => sum + copies, 0);
  for (let pass = 0; pass < moves.passes; pass += 1) {
    const order = inDrawnOrder(instance, rest, random);
    for (let from = 0; from < order.length; from += boardsAMove) {
      if (instance.meter.spent >= moves.until) return;
      const groups = order.slice(from, from + boardsAMove);
      const cut = new Float64Array(prices.length);
      let share = 0;
      for (const g of groups) share += rest.copies[g]! / slots;
      for (const column of wantedAt(instance, rest, prices, groups, moves.fine)) {
        const copies = rest.copies[column.group]!;
        column.kinds.forEach((kind, i) => (cut[kind] = cut[kind]! + copies * column.counts[i]!));
        addToPool(pool, column);
      }
      moveOnce(instance, rest, prices, cut, { share, step });
      yield;
    }
    step *= moves.decay;
    // Patterns found in the rough are no measure: those found later are better by a share that differs from kind to kind.
    if (!moves.fine) continue;
    const met = pricesAmongMet(instance, rest, pool.columns, prices, random);
    prices.set(mixed(met.kind, prices, shareOfMet));
  }
}

/** Groups that are there, drawn; those with even and with odd numbers in turn, since either half has a thread of its own where there are many. */
function inDrawnOrder({ groups }: Instance, rest: Rest, random: Random): number[] {
  const halves = [0, 1].map((half) =>
    [...groups.keys()].filter((g) => g % 2 === half && rest.copies[g]! > 0),
  );
  for (const half of halves) shuffle(random, half);
  const [even, odd] = halves as [number[], number[]];
  const longer = Math.max(even.length, odd.length);
  return Array.from({ length: longer }, (_, i) => [even[i], odd[i]]).flatMap((pair) =>
    pair.filter((g) => g !== undefined),
  );
}

/** What these boards would cut at these prices: each its best pattern within the caps, or one nearly as good, if it pays. */
function wantedAt(
  instance: Instance,
  rest: Rest,
  prices: Float64Array,
  groups: readonly number[],
  fine: boolean,
): Column[] {
  const asks = groups.map((g): PriceAsk => {
    const { pricer, cost } = instance.groups[g]!;
    const how = fine ? 'fine' : 'rough';
    return {
      pricer,
      how,
      worth: worthOn(instance, g, prices, rest),
      target: cost,
      slack: goodEnough * Math.max(0, cost),
    };
  });
  return instance.price(asks).flatMap(({ pattern }, i) => {
    if (pattern === null) return [];
    const g = groups[i]!;
    const column = columnFound(instance, rest, g, pattern);
    return columnWorth(column, prices) > column.cost ? [column] : [];
  });
}
