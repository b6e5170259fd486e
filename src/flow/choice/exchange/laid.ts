import type { FlatColumns } from '../flat-columns.ts';

/**
 * Columns laid on boards, each copy of a group a slot. Pieces may be laid out more often than they are wanted, which brings nothing, or
 * be left open at a price.
 */
export interface Laid {
  readonly table: FlatColumns;
  /** Group of each slot. */
  readonly slots: Int32Array;
  /** Slots of group g: firstSlot[g] up to firstSlot[g + 1]. */
  readonly firstSlot: Int32Array;
  /** Column in each slot; −1: none. */
  readonly chosen: Int32Array;
  /** Pieces of each kind still open; below 0: too many laid out. */
  readonly left: Int32Array;
  /** By kind, the slots whose column holds it. */
  readonly holders: readonly number[][];
  /** What an open piece of each kind costs. */
  readonly price: Float64Array;
  /** By column, what it adds when all its pieces are open: below 0, mostly. */
  readonly leastAdded: Float64Array;
  /** The table's entries, those of each column by falling worth: what is dearest is soonest missed. */
  readonly kind: Int32Array;
  readonly count: Int32Array;
  /** Columns and entries looked at: what the work is counted by. */
  looks: number;
}

/** Slots of group g: from the g-th of these numbers up to the next. */
export function firstSlots(copies: ArrayLike<number>): Int32Array {
  const first = new Int32Array(copies.length + 1);
  for (let g = 0; g < copies.length; g += 1) first[g + 1] = first[g]! + copies[g]!;
  return first;
}

/** Nothing laid yet. @param copies of each group; so many slots it has   @param demand pieces of each kind */
export function nothingLaid(
  table: FlatColumns,
  copies: ArrayLike<number>,
  demand: ArrayLike<number>,
  price: Float64Array,
): Laid {
  const { kind, count } = byFallingWorth(table, price);
  const slots = Int32Array.from(
    Array.from(copies).flatMap((count, g) => Array.from({ length: count }, () => g)),
  );
  const firstSlot = firstSlots(copies);
  return {
    table,
    slots,
    firstSlot,
    chosen: new Int32Array(slots.length).fill(-1),
    left: Int32Array.from(demand),
    holders: Array.from(demand, () => []),
    price,
    leastAdded: table.cost.map((cost, c) => cost - worthOf(table, c, price)),
    kind,
    count,
    looks: 0,
  };
}

function worthOf({ at, kind, count }: FlatColumns, c: number, price: Float64Array): number {
  let sum = 0;
  for (let e = at[c]!; e < at[c + 1]!; e += 1) sum += count[e]! * price[kind[e]!]!;
  return sum;
}

/** The entries of a table, those of each column by falling worth. */
function byFallingWorth(
  { cost, at, kind, count }: FlatColumns,
  price: Float64Array,
): Pick<Laid, 'kind' | 'count'> {
  const order = Array.from(cost).flatMap((_, c) =>
    Array.from({ length: at[c + 1]! - at[c]! }, (__, i) => at[c]! + i).sort(
      (a, b) => count[b]! * price[kind[b]!]! - count[a]! * price[kind[a]!]! || a - b,
    ),
  );
  return { kind: Int32Array.from(order, (e) => kind[e]!), count: Int32Array.from(order, (e) => count[e]!) };
}

/** What laying a column adds: its cost less the price of the open pieces it holds. 0 for none (−1). */
export function addedBy({ table, left, price, kind, count }: Laid, column: number): number {
  if (column < 0) return 0;
  const { at } = table;
  let added = table.cost[column]!;
  for (let e = at[column]!; e < at[column + 1]!; e += 1) {
    const open = left[kind[e]!]!;
    if (open > 0) added -= price[kind[e]!]! * Math.min(open, count[e]!);
  }
  return added;
}

/** Takes up what lies in a slot. */
export function takeUp(laid: Laid, slot: number): void {
  const column = laid.chosen[slot]!;
  if (column < 0) return;
  const { at, kind, count } = laid.table;
  for (let e = at[column]!; e < at[column + 1]!; e += 1) {
    laid.left[kind[e]!] = laid.left[kind[e]!]! + count[e]!;
    const holders = laid.holders[kind[e]!]!;
    holders[holders.indexOf(slot)] = holders.at(-1)!;
    holders.pop();
  }
  laid.chosen[slot] = -1;
}

/** Lays a column, or none (−1), in an empty slot. */
export function lay(laid: Laid, slot: number, column: number): void {
  laid.chosen[slot] = column;
  if (column < 0) return;
  const { at, kind, count } = laid.table;
  for (let e = at[column]!; e < at[column + 1]!; e += 1) {
    laid.left[kind[e]!] = laid.left[kind[e]!]! - count[e]!;
    laid.holders[kind[e]!]!.push(slot);
  }
}

/**
 * The column, or none (−1), that adds least in an empty slot. A column is dropped as soon as what it holds too much makes it dearer than the
 * best so far: mostly by its dearest piece. O(columns of its group).
 */
export function leastAdding(laid: Laid, slot: number): number {
  const { left, price, leastAdded, kind, count } = laid;
  const { first, at } = laid.table;
  const group = laid.slots[slot]!;
  const until = first[group + 1]!;
  let least = 0;
  let best = -1;
  for (let column = first[group]!; column < until; column += 1) {
    let added = leastAdded[column]!;
    const end = at[column + 1]!;
    for (let e = at[column]!; e < end && added < least; e += 1) {
      const open = left[kind[e]!]!;
      const tooMany = open > 0 ? count[e]! - open : count[e]!;
      if (tooMany > 0) added += tooMany * price[kind[e]!]!;
    }
    if (added >= least) continue;
    least = added;
    best = column;
  }
  laid.looks += until - first[group]!;
  return best;
}
