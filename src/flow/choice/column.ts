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
  const claimed = placements.reduce((sum, { kind }) => sum + board.claims[kind]!, board.cost);
  const tally = new Map<number, number>();
  for (const { kind } of placements) tally.set(kind, (tally.get(kind) ?? 0) + 1);
  const kinds = [...tally.keys()].sort((a, b) => a - b);
  const counts = kinds.map((kind) => tally.get(kind) ?? 0);
  const column = { group, placements, kinds, counts, cost: claimed };
  return { ...column, cost: claimed + besideCost(column, board) };
}

/** Pieces of these kinds in the column. */
export function countOf({ kinds, counts }: Pick<Column, 'kinds' | 'counts'>, of: readonly number[]): number {
  return kinds.reduce((sum, kind, i) => sum + (of.includes(kind) ? counts[i]! : 0), 0);
}

/** Of the column's cost, the credit lost by long pieces beside each other on top of the claims of each (see StockGroup). */
export function besideCost(
  column: Pick<Column, 'kinds' | 'counts'>,
  { beside }: Pick<StockGroup, 'beside'>,
): number {
  return beside === null ? 0 : Math.max(0, countOf(column, beside.kinds) - 1) * beside.credit;
}

/** Columns of one group with the same counts are one column to the master. */
export function columnKey(column: Column): string {
  return `${column.group}|${column.kinds.join(',')}|${column.counts.join(',')}`;
}

/** Prices of pieces, and what a copy of each group is worth beyond its cost. */
export interface Prices {
  readonly kind: Float64Array;
  readonly group: Float64Array;
}

/** What the column costs beyond what it is worth at these prices; below 0: it pays. */
export function columnLoss(column: Column, { kind, group }: Prices): number {
  return column.cost + group[column.group]! - columnWorth(column, kind);
}

/** What the column's pieces are worth together. */
export function columnWorth(column: Column, worth: Float64Array): number {
  let sum = 0;
  column.kinds.forEach((kind, i) => (sum += column.counts[i]! * worth[kind]!));
  return sum;
}
