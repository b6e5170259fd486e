import { type Random, shuffle } from '../../../base/random/random.ts';
import type { Column, Prices } from '../column.ts';
import { columnTable } from '../column-table.ts';
import type { FlatColumns } from '../flat-columns.ts';
import type { Rest } from '../generate.ts';
import type { Instance } from '../instance.ts';
import { dueFor } from '../wanted.ts';
import { moveOnce } from './move-once.ts';

/** Passes through all boards, the share of itself a price first moves by, and what that is multiplied with from pass to pass. */
const passes = 400;
const firstStep = 0.05;
const decay = 0.99;

/** Boards looked at between two moves of the prices. */
const boardsAMove = 8;

/** Passes between two looks at what the prices come to. */
const passesALook = 5;

/** Work of an entry of a column looked at. */
const workPerEntry = 0.5;

/** Prices of pieces and boards, and what a bound would be if no other patterns were to be had. */
export interface MetPrices extends Prices {
  readonly value: number;
}

/** The column of a group that pays most at these prices, and what it brings beyond its cost; none that pays: −1 and 0. */
function bestPaying(
  { cost, at, kind, count, first }: FlatColumns,
  g: number,
  prices: Float64Array,
): { readonly column: number; readonly pays: number } {
  let pays = 0;
  let column = -1;
  for (let c = first[g]!; c < first[g + 1]!; c += 1) {
    let worth = -cost[c]!;
    for (let e = at[c]!; e < at[c + 1]!; e += 1) worth += prices[kind[e]!]! * count[e]!;
    if (worth <= pays) continue;
    pays = worth;
    column = c;
  }
  return { column, pays };
}

/** What a job is worth at these prices less what its boards bring with the columns of the table. */
function valueAt(instance: Instance, rest: Rest, table: FlatColumns, prices: Float64Array): MetPrices {
  const group = Float64Array.from(instance.groups, (_, g) => bestPaying(table, g, prices).pays);
  const brought = group.reduce((sum, pays, g) => sum + rest.copies[g]! * pays, 0);
  return { kind: prices.slice(), group, value: dueFor(instance, rest, prices) - brought };
}

/**
 * The prices at which a master over the columns met comes out, nearly: the same incremental subgradient method as among all patterns
 * (move-prices.ts), where asking a board is a look through a short list. On 192 boards and 1,735 columns it comes within a
 * thousandth of a percent of the master's value in twenty milliseconds, where its simplex takes seconds.
 * @param from prices to begin with, none of them 0 where a kind is wanted
 */
export function pricesAmongMet(
  instance: Instance,
  rest: Rest,
  columns: readonly Column[],
  from: Float64Array,
  random: Random,
): MetPrices {
  const { groups, kinds } = instance;
  const table = columnTable(columns, groups.length, kinds.length).flat;
  const slots = rest.copies.reduce((sum, copies) => sum + copies, 0);
  const prices = from.slice();
  const cut = new Float64Array(kinds.length);
  let best = valueAt(instance, rest, table, prices);
  let step = firstStep;
  const order = [...groups.keys()];
  for (let pass = 1; pass <= passes; pass += 1) {
    shuffle(random, order);
    for (let start = 0; start < order.length; start += boardsAMove) {
      cut.fill(0);
      const now = order.slice(start, start + boardsAMove);
      const copies = now.reduce((sum, g) => sum + rest.copies[g]!, 0);
      for (const g of now) addBest(table, g, rest.copies[g]!, prices, cut);
      moveOnce(instance, rest, prices, cut, { share: copies / slots, step });
    }
    step *= decay;
    if (pass % passesALook !== 0) continue;
    const here = valueAt(instance, rest, table, prices);
    if (here.value > best.value) best = here;
  }
  instance.meter.spent += passes * (workPerEntry * table.kind.length + order.length * kinds.length);
  return best;
}

/** Adds to what is cut what so many copies of a board would. */
function addBest(
  table: FlatColumns,
  g: number,
  copies: number,
  prices: Float64Array,
  cut: Float64Array,
): void {
  const { column } = bestPaying(table, g, prices);
  if (column < 0) return;
  for (let e = table.at[column]!; e < table.at[column + 1]!; e += 1)
    cut[table.kind[e]!] = cut[table.kind[e]!]! + copies * table.count[e]!;
}
