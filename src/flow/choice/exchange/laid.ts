import type { ColumnTable } from '../column-table.ts';

/**
 * Columns laid on boards, each copy of a group a slot. Pieces may be laid out more often than they are wanted, which brings nothing, or
 * be left open at a price.
 */
export interface Laid {
  readonly table: ColumnTable;
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
  /** Columns and entries looked at: what the work is counted by. */
  looks: number;
}

/** Nothing laid yet. @param copies of each group; so many slots it has   @param demand pieces of each kind */
export function nothingLaid(
  table: ColumnTable,
  copies: readonly number[],
  demand: ArrayLike<number>,
  price: Float64Array,
): Laid {
  const slots = Int32Array.from(copies.flatMap((count, g) => Array.from({ length: count }, () => g)));
  const firstSlot = new Int32Array(copies.length + 1);
  copies.forEach((count, g) => (firstSlot[g + 1] = firstSlot[g]! + count));
  return {
    table,
    slots,
    firstSlot,
    chosen: new Int32Array(slots.length).fill(-1),
    left: Int32Array.from(demand),
    holders: Array.from(demand, () => []),
    price,
    looks: 0,
  };
}

/** What laying a column adds: its cost less the price of the open pieces it holds. 0 for none (−1). */
export function addedBy({ table, left, price }: Laid, column: number): number {
  if (column < 0) return 0;
  const { at, kind, count } = table;
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

/** The column, or none (−1), that adds least in an empty slot. O(columns of its group). */
export function leastAdding(laid: Laid, slot: number): number {
  const { first } = laid.table;
  const group = laid.slots[slot]!;
  let least = 0;
  let best = -1;
  for (let column = first[group]!; column < first[group + 1]!; column += 1) {
    const added = addedBy(laid, column);
    if (added >= least) continue;
    least = added;
    best = column;
  }
  laid.looks += first[group + 1]! - first[group]!;
  return best;
}
