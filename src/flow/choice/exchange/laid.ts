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
  /** By kind × slots, the slots whose column holds it: as many as `held` says of the kind. */
  readonly holders: Int32Array;
  readonly held: Int32Array;
  /** What an open piece of each kind costs. */
  readonly price: Float64Array;
  /** Columns, group by group as in the table, but in each by rising least added. */
  readonly ranked: Int32Array;
  /** What each of them adds when all its pieces are open: below 0, mostly. */
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
    holders: new Int32Array(demand.length * slots.length),
    held: new Int32Array(demand.length),
    price,
    ...rankedByLeast(table, price),
    kind,
    count,
    looks: 0,
  };
}

function rankedByLeast(table: FlatColumns, price: Float64Array): Pick<Laid, 'ranked' | 'leastAdded'> {
  const { cost, group } = table;
  const least = cost.map((each, c) => each - worthOf(table, c, price));
  const ranked = Int32Array.from(cost.keys()).sort(
    (a, b) => group[a]! - group[b]! || least[a]! - least[b]! || a - b,
  );
  return { ranked, leastAdded: Float64Array.from(ranked, (c) => least[c]!) };
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

/** What pieces laid bring when so many of their kind are open. */
function openWorth(price: number, open: number, pieces: number): number {
  return open > 0 ? price * (open < pieces ? open : pieces) : 0;
}

/** Takes up what lies in a slot. Returns what laying it there again would add: its cost less the price of the open pieces it holds. */
export function takeUp(
  { table, slots, chosen, left, holders, held, price, kind, count }: Laid,
  slot: number,
): number {
  const column = chosen[slot]!;
  if (column < 0) return 0;
  chosen[slot] = -1;
  const { at } = table;
  let added = table.cost[column]!;
  const end = at[column + 1]!;
  for (let e = at[column]!; e < end; e += 1) {
    const k = kind[e]!;
    const pieces = count[e]!;
    const open = left[k]! + pieces;
    left[k] = open;
    added -= openWorth(price[k]!, open, pieces);
    const last = k * slots.length + (held[k]! -= 1);
    let own = last;
    while (holders[own] !== slot) own -= 1;
    holders[own] = holders[last]!;
  }
  return added;
}

/** Lays a column, or none (−1), in an empty slot. Returns what that adds: as above; 0 for none. */
export function lay(
  { table, slots, chosen, left, holders, held, price, kind, count }: Laid,
  slot: number,
  column: number,
): number {
  chosen[slot] = column;
  if (column < 0) return 0;
  const { at } = table;
  let added = table.cost[column]!;
  const end = at[column + 1]!;
  for (let e = at[column]!; e < end; e += 1) {
    const k = kind[e]!;
    const pieces = count[e]!;
    const open = left[k]!;
    left[k] = open - pieces;
    added -= openWorth(price[k]!, open, pieces);
    holders[k * slots.length + held[k]!] = slot;
    held[k] = held[k]! + 1;
  }
  return added;
}

/**
 * The column, or none (−1), that adds least in an empty slot. Columns are looked at by rising least added, up to where that is no less than the
 * best so far, and one is dropped as soon as what it holds too much makes it dearer: mostly by its dearest piece. O(columns of its group).
 */
export function leastAdding(laid: Laid, slot: number): number {
  const { left, price, ranked, leastAdded, kind, count } = laid;
  const { first, at } = laid.table;
  const group = laid.slots[slot]!;
  const begin = first[group]!;
  const until = first[group + 1]!;
  let least = 0;
  let best = -1;
  let rank = begin;
  for (; rank < until && leastAdded[rank]! < least; rank += 1) {
    const column = ranked[rank]!;
    let added = leastAdded[rank]!;
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
  laid.looks += rank - begin;
  return best;
}
