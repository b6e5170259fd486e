import type { Placement } from '../patterns/plate.ts';
import { type Column, columnKey, columnOf, columnWorth } from './column.ts';
import type { Instance, StockGroup } from './instance.ts';
import { type MasterAnswer, openMaster } from './master.ts';

/** The columns found so far, each once. */
export interface Pool {
  readonly columns: Column[];
  readonly keys: Set<string>;
  /** Prices of the last master over these columns, by which the likelier ones are told; null before the first. */
  prices: { readonly kind: Float64Array; readonly group: Float64Array } | null;
}

/** Most columns that a master opens with, for each of its rows: many more cost time and seldom come into use. */
const columnsPerRow = 4;

/** The columns that can be cut from what is left; of many, those that the last prices make least dear. */
export function likelyColumns(instance: Instance, rest: Rest, { columns, prices }: Pool): Column[] {
  const fitting = columns.filter((column) => fitsRest(column, rest));
  const most = columnsPerRow * (instance.kinds.length + instance.groups.length);
  if (fitting.length <= most || prices === null) return fitting;
  const dear = fitting.map((c) => c.cost + prices.group[c.group]! - columnWorth(c, prices.kind));
  const order = [...fitting.keys()].sort((a, b) => dear[a]! - dear[b]! || a - b);
  return order
    .slice(0, most)
    .sort((a, b) => a - b)
    .map((at) => fitting[at]!);
}

/** A pool with no columns yet. */
export function emptyPool(): Pool {
  return { columns: [], keys: new Set(), prices: null };
}

/** Adds a column unless the pool has one like it; says whether it did. */
export function addToPool(pool: Pool, column: Column): boolean {
  const key = columnKey(column);
  if (column.kinds.length === 0 || pool.keys.has(key)) return false;
  pool.keys.add(key);
  pool.columns.push(column);
  return true;
}

/** What is still to be cut, and from what. */
export interface Rest {
  readonly demand: Int32Array;
  readonly copies: Int32Array;
}

/** Everything still to be cut, from every copy of every board. */
export function wholeRest(instance: Instance): Rest {
  return {
    demand: Int32Array.from(instance.kinds, (kind) => kind.demand),
    copies: Int32Array.from(instance.groups, (group) => group.copies),
  };
}

/** Whether the column can be cut from what is left, no piece too many. */
export function fitsRest(column: Column, rest: Rest): boolean {
  return (
    rest.copies[column.group]! > 0 && column.kinds.every((kind, i) => column.counts[i]! <= rest.demand[kind]!)
  );
}

/**
 * How many patterns end a round: the master moves on before the other groups are priced at stale duals. One for every
 * five groups, at least eight.
 */
export function enoughPatterns(instance: Instance): number {
  return Math.max(8, Math.ceil(instance.groups.length / 5));
}

/** Relative size below which a reduced cost counts as zero. */
export const reducedCostTolerance = 1e-7;

export interface Generated {
  readonly answer: MasterAnswer;
  /** The columns of the last master, aligned with `answer.use`. */
  readonly columns: readonly Column[];
  readonly rounds: number;
}

/** The placements without those that are more than the caps of their kind. */
export function withinCaps(placements: readonly Placement[], caps: Int32Array): Placement[] {
  const left = caps.slice();
  return placements.filter(({ kind }) => (left[kind] = left[kind]! - 1) >= 0);
}

/**
 * A pattern worth more than `even`, within the caps. The uncapped search is far quicker, so it is asked first; what it has too many of
 * is left out, and only if that leaves too little is one sought that keeps the caps from the start.
 */
function priced(
  group: StockGroup,
  g: number,
  worth: Float64Array,
  caps: Int32Array,
  even: number,
  fine: boolean,
): Column | null {
  const free = group.pricer.glance(worth, even, fine);
  if (free === null) return null;
  const kept = withinCaps(free.placements, caps);
  const column = columnOf(g, kept, group);
  if (kept.length === free.placements.length || columnWorth(column, worth) > even) return column;
  return columnOf(g, group.pricer.pattern(worth, caps, even, fine).placements, group);
}

/** With more groups than this only those in play are priced, and how near its due the best pattern of such a group must come. */
const mostPriced = 40;
const nearDue = 0.95;

/** Groups of which some pattern met before nearly pays at these prices: others would hardly give one that does. */
function inPlay({ groups }: Instance, pool: Pool, { kindPrice, groupPrice }: MasterAnswer): boolean[] {
  if (groups.length <= mostPriced) return groups.map(() => true);
  const near = groups.map(() => false);
  for (const column of pool.columns) {
    const due = column.cost + groupPrice[column.group]!;
    if (columnWorth(column, kindPrice) >= nearDue * due) near[column.group] = true;
  }
  return near;
}

/**
 * Column generation with the capped pattern search: solve the master, price every group with what is left,
 * add the patterns of negative reduced cost, until a round finds none, `rounds` are done or the meter
 * passes `until`.
 * Yields after each round. The result is a good set of columns; the bound is another matter (node.ts).
 */
export function* generateColumns(
  instance: Instance,
  rest: Rest,
  pool: Pool,
  limits: { readonly rounds: number; readonly until: number; readonly fine: boolean },
): Generator<void, Generated, void> {
  const columns = likelyColumns(instance, rest, pool);
  const master = openMaster({
    demand: [...rest.demand],
    penalty: instance.kinds.map((kind) => kind.penalty),
    copies: [...rest.copies],
  });
  for (const column of columns) master.add(column);
  for (let round = 1; ; round += 1) {
    const answer = master.solve();
    if (round > limits.rounds || instance.meter.spent > limits.until)
      return { answer, columns, rounds: round };
    let found = 0;
    const enough = enoughPatterns(instance);
    const isInPlay = inPlay(instance, pool, answer);
    for (let turn = 0; turn < instance.groups.length && found < enough; turn += 1) {
      const g = (turn + round * enough) % instance.groups.length;
      const group = instance.groups[g]!;
      if (rest.copies[g] === 0 || !isInPlay[g]) continue;
      const column = priced(
        group,
        g,
        worthOn(instance, g, answer.kindPrice, rest),
        rest.demand,
        group.cost + answer.groupPrice[g]!,
        limits.fine,
      );
      if (column === null) continue;
      const gain = columnWorth(column, answer.kindPrice) - column.cost - answer.groupPrice[g]!;
      if (gain <= reducedCostTolerance * (1 + group.cost)) continue;
      if (!addToPool(pool, column)) continue;
      columns.push(column);
      master.add(column);
      found += 1;
    }
    yield;
    if (found === 0) return { answer, columns, rounds: round };
  }
}

/** Worth of a piece of each kind on one group: its dual less the credit its area loses; 0 for a kind not wanted any more. */
function worthOn(instance: Instance, g: number, price: Float64Array, rest: Rest): Float64Array {
  const { rate } = instance.groups[g]!;
  return price.map((each, k) => {
    const { length, width } = instance.kinds[k]!;
    return rest.demand[k]! > 0 ? each - rate * length * width : 0;
  });
}
