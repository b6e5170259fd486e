import { type Random, uniform } from '../../../base/random/random.ts';
import type { Column } from '../column.ts';
import { keepFound } from '../found.ts';
import { type Pool, type Rest, wholeRest, worthOn } from '../generate.ts';
import { greedy, tastedPrices } from '../greedy.ts';
import type { Instance } from '../instance.ts';
import { type Plan, planOf, restAfter, withoutSurplus } from '../plan.ts';
import { type PriceAsk, priceInLots } from '../price-together.ts';
import { layAgain } from '../prices/lay-again.ts';
import { type Solving, isMet, offerTo } from '../standing.ts';
import type { Exchange } from './exchange.ts';
import { type InPlay, columnsInPlay, groupsInPlay, worthAbout } from './in-play.ts';
import { firstSlots } from './laid.ts';

/** Moves of an annealing for each group: where there are many rounds, and where there are so many boards that there is time for one or two. */
export const movesPerGroup = { usual: 1500, inFewRounds: 9000 } as const;

/**
 * How temperatures fall, in shares of what a board's pattern is worth in the mean: of a round's two annealings, one for each thread that there may be,
 * one forgets where it began, and one stays near.
 */
const coolings = [
  { from: 0.08, to: 6e-3 },
  { from: 0.025, to: 4e-3 },
] as const;

/** By how much more than its price an open piece costs at first, what is added when a round leaves one open, and what is left of that a round later. */
const surcharge = { first: 0.15, more: 0.1, decay: 0.95, ofMissing: 0.5 } as const;

/** Share of its cost by which a pattern asked for may fall short of the best. */
const goodEnough = 5e-3;

/** Share of a round's work that goes into neighbourhoods laid out again. */
const shareLaidAgain = 0.05;

/** Work of a column looked at. */
const workPerLook = 2.5;

/** Annealings that begin from a layout, each with its own chances. */
function tasksFrom(
  instance: Instance,
  pool: Pool,
  { columns, flat, order }: InPlay,
  laid: readonly Column[],
  price: Float64Array,
  moves: number,
  stream: Random,
): Exchange[] {
  const { demand, copies } = wholeRest(instance);
  const pieces = demand.reduce((sum, count) => sum + count, 0);
  const slots = copies.map((count) => Math.min(count, pieces));
  const next = firstSlots(slots);
  const start = new Int32Array(next.at(-1)!).fill(-1);
  const number = new Map(columns.map((column, c) => [column, c]));
  for (const column of laid) {
    start[next[column.group]!] = number.get(column)!;
    next[column.group] = next[column.group]! + 1;
  }
  const { groups } = instance;
  const mean = groups.reduce((sum, _, g) => sum + worthAbout(instance, pool, g), 0) / groups.length;
  return coolings.map(({ from, to }) => ({
    columns: flat,
    order,
    copies: slots,
    demand,
    price,
    start,
    moves,
    cooling: { from: from * mean, to: to * mean },
    seed: Math.floor(uniform(stream) * 2 ** 32),
  }));
}

/** Asks groups for patterns at such prices, each for another taste of them. */
function* newPatterns(
  instance: Instance,
  rest: Rest,
  pool: Pool,
  groups: readonly number[],
  prices: Float64Array,
  random: Random,
): Generator<void, void, void> {
  const asks = groups.map((g): PriceAsk => {
    const { pricer, cost } = instance.groups[g]!;
    const worth = worthOn(instance, g, tastedPrices(prices, random), rest);
    return { pricer, how: 'fine', worth, target: 0, slack: goodEnough * Math.max(0, cost) };
  });
  const answers = yield* priceInLots(instance.price, asks);
  keepFound(instance, rest, pool, groups, answers);
}

/** Surcharges after a round: more for what it left open, and much more for what no free board could take. */
function moveSurcharges(surcharges: Float64Array, open: Int32Array, missing: Int32Array): void {
  surcharges.forEach((each, k) => {
    if (missing[k]! > 0) surcharges[k] = each + surcharge.ofMissing;
    else if (open[k]! > 0) surcharges[k] = each + surcharge.more;
    else surcharges[k] = Math.max(surcharge.first / 2, each * surcharge.decay);
  });
}

/** A layout that an annealing leads to, and what was open before a greedy laid it out on the boards left free. */
interface End {
  readonly plan: Plan;
  readonly open: Int32Array;
}

function* completed(instance: Instance, pool: Pool, taken: readonly Column[]): Generator<void, End, void> {
  const kept = withoutSurplus(instance, taken);
  const after = restAfter(instance, kept);
  const open = after.demand.slice();
  const found = yield* greedy(instance, after, pool, pool.prices!.kind, { fine: true, fromPool: true });
  return { plan: planOf(instance, [...kept, ...found]), open };
}

/** By kind, the most of these counts. */
function mostOf(counts: readonly Int32Array[]): Int32Array {
  return counts[0]!.map((_, k) => Math.max(...counts.map((each) => each[k]!)));
}

/**
 * Improves a layout of many boards in rounds: columns met are exchanged until next to nothing is lost, twice with other chances; what is left
 * open is laid out by a greedy on the boards left free; some neighbourhoods are laid out again; new patterns are asked for at
 * prices that rise for what was left open. Needs the pool's prices.
 * Yields after each board asked and each thousand moves; ends when the budget is spent.
 */
export function* layByExchange(
  { instance, store, standing, stream, budget }: Solving,
  movesOfGroup: number,
): Generator<void, void, void> {
  const moves = movesOfGroup * instance.groups.length;
  const { pool } = store;
  const { meter } = instance;
  const rest = wholeRest(instance);
  const surcharges = new Float64Array(instance.kinds.length).fill(surcharge.first);
  const offer = offerTo(standing);
  while (
    meter.spent < budget &&
    !isMet(standing) &&
    pool.prices !== null &&
    standing.best.columns.length > 0
  ) {
    const begun = meter.spent;
    const prices = pool.prices.kind.map((price, k) => price * (1 + surcharges[k]!));
    const { columns: laid } = standing.best;
    const inPlay = columnsInPlay(instance, pool, laid);
    const found = yield* instance.exchange(tasksFrom(instance, pool, inPlay, laid, prices, moves, stream));
    const taken = found.map(({ chosen }) =>
      Array.from(chosen).flatMap((c) => (c < 0 ? [] : [inPlay.columns[c]!])),
    );
    const ends: End[] = [];
    for (const [i, { looks }] of found.entries()) {
      meter.spent += workPerLook * looks;
      ends.push(yield* completed(instance, pool, taken[i]!));
      offer(ends[i]!.plan);
    }
    moveSurcharges(
      surcharges,
      mostOf(ends.map(({ open }) => open)),
      mostOf(ends.map(({ plan }) => plan.missing)),
    );
    yield* newPatterns(instance, rest, pool, groupsInPlay(instance, pool, taken.flat()), prices, stream);
    const again = (shareLaidAgain / (1 - shareLaidAgain)) * (meter.spent - begun);
    yield* layAgain(instance, standing.best, store, stream, Math.min(budget, meter.spent + again), offer);
  }
}
