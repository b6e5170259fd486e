import type { Placement } from '../patterns/plate.ts';
import type { StockGroup } from './instance.ts';

/** One pattern in the master: how one copy of a group's board is cut. */
export interface Column {
  readonly group: number;
  readonly placements: readonly Placement[];
  /** Kinds cut and how often, kinds ascending. */
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
  readonly cost: number;
}

/** Makes a column of placements on a group's board; counts are taken from them, and the cost (see StockGroup). */
export function columnOf(group: number, placements: readonly Placement[], board: StockGroup): Column {
  const cost = placements.reduce((sum, { kind }) => sum + board.claims[kind]!, board.cost);
  const tally = new Map<number, number>();
  for (const { kind } of placements) tally.set(kind, (tally.get(kind) ?? 0) + 1);
  const kinds = [...tally.keys()].sort((a, b) => a - b);
  return { group, placements, kinds, counts: kinds.map((kind) => tally.get(kind) ?? 0), cost };
}

/** Columns of one group with the same counts are one column to the master. */
export function columnKey(column: Column): string {
  return `${column.group}|${column.kinds.join(',')}|${column.counts.join(',')}`;
}

/** What the column's pieces are worth together. */
export function columnWorth(column: Column, worth: Float64Array): number {
  let sum = 0;
  column.kinds.forEach((kind, i) => (sum += column.counts[i]! * worth[kind]!));
  return sum;
}
