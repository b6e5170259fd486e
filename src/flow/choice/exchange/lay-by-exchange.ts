import type { Random } from '../../../base/random/random.ts';
import { type Column, columnLoss } from '../column.ts';
import { columnTable } from '../column-table.ts';
import { keepFound } from '../found.ts';
import { type Pool, type Rest, wholeRest, worthOn } from '../generate.ts';
import { greedy, tastedPrices } from '../greedy.ts';
import type { Instance } from '../instance.ts';
import { planOf, restAfter, withoutSurplus } from '../plan.ts';
import { type PriceAsk, priceInLots } from '../price-together.ts';
import { layAgain } from '../prices/lay-again.ts';
import { type Solving, isMet, offerTo } from '../standing.ts';
import { exchangeColumns } from './exchange-columns.ts';
import { type Laid, lay, nothingLaid } from './laid.ts';

/** Moves of a round for each group, and how its temperature falls, in shares of what a board's pattern is worth in the mean. */
const movesPerGroup = 1000;
const cooling = { from: 0.03, to: 8e-4 } as const;

/** A column is in play if it is not dearer than even by more than this share of that worth, and some small change. */
const mostLoss = 0.25;

/** By how much more than its price an open piece costs at first, what is added when a round leaves one open, and what is left of that a round later. */
const surcharge = { first: 0.15, more: 0.1, decay: 0.95, ofMissing: 0.5 } as const;

/** Share of its cost by which a pattern asked for may fall short of the best. */
const goodEnough = 5e-3;

/** A group is in play if some pattern of it loses less than this share of it. */
const nearlyPays = 0.05;

/** Share of a round's work that goes into neighbourhoods laid out again. */
const shareLaidAgain = 0.35;

/** Work of a column looked at. */
const workPerLook = 5;

/** What a pattern of a group is worth about: its board's cost, and where boards cost nothing, what it brings at the prices. */
function worthAbout({ groups }: Instance, pool: Pool, g: number): number {
  return groups[g]!.cost > 0 ? groups[g]!.cost : pool.prices!.group[g]!;
}

/** The incumbent, laid among all columns in play. */
function laidOut(instance: Instance, pool: Pool, columns: readonly Column[], price: Float64Array): Laid {
  const own = new Set(columns);
  const others = pool.columns.filter(
    (column) =>
      !own.has(column) &&
      columnLoss(column, pool.prices!) < mostLoss * worthAbout(instance, pool, column.group) + 1,
  );
  const table = columnTable([...own, ...others], instance.groups.length, instance.kinds.length);
  const { demand, copies } = wholeRest(instance);
  const pieces = demand.reduce((sum, count) => sum + count, 0);
  const laid = nothingLaid(
    table,
    Array.from(copies, (count) => Math.min(count, pieces)),
    demand,
    price,
  );
  const number = new Map(table.columns.map((column, c) => [column, c]));
  const next = laid.firstSlot.slice();
  for (const column of columns) {
    lay(laid, next[column.group]!, number.get(column)!);
    next[column.group] = next[column.group]! + 1;
  }
  return laid;
}

/** Groups that may come into a good layout: those laid out, and those of which some pattern nearly pays. */
function groupsInPlay(instance: Instance, pool: Pool, columns: readonly Column[]): number[] {
  const near = new Set(columns.map(({ group }) => group));
  for (const column of pool.columns)
    if (columnLoss(column, pool.prices!) < nearlyPays * worthAbout(instance, pool, column.group))
      near.add(column.group);
  return [...near].sort((a, b) => a - b);
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

/**
 * Improves a layout of many boards in rounds: columns met are exchanged until next to nothing is lost; what is left open is laid out
 * by a greedy on the boards left free; some neighbourhoods are laid out again; new patterns are asked for at prices that rise
 * for what was left open. Needs the pool's prices.
 * Yields after each board asked and each thousand moves; ends when the budget is spent.
 */
export function* layByExchange({
  instance,
  store,
  standing,
  stream,
  budget,
}: Solving): Generator<void, void, void> {
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
    const laid = laidOut(instance, pool, standing.best.columns, prices);
    const mean =
      instance.groups.reduce((sum, _, g) => sum + worthAbout(instance, pool, g), 0) / instance.groups.length;
    const temperature = { from: cooling.from * mean, to: cooling.to * mean };
    const moves = movesPerGroup * instance.groups.length;
    const best = yield* exchangeColumns(laid, moves, temperature, stream);
    meter.spent += workPerLook * laid.looks;
    const taken = Array.from(best).flatMap((c) => (c < 0 ? [] : [laid.table.columns[c]!]));
    const kept = withoutSurplus(instance, taken);
    const after = restAfter(instance, kept);
    const open = after.demand.slice();
    const found = yield* greedy(instance, after, pool, pool.prices.kind, { fine: true, fromPool: true });
    const plan = planOf(instance, [...kept, ...found]);
    offer(plan);
    moveSurcharges(surcharges, open, plan.missing);
    yield* newPatterns(instance, rest, pool, groupsInPlay(instance, pool, taken), prices, stream);
    const again = (shareLaidAgain / (1 - shareLaidAgain)) * (meter.spent - begun);
    yield* layAgain(instance, standing.best, store, stream, Math.min(budget, meter.spent + again), offer);
  }
}
