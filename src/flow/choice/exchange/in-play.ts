import { type Column, columnLoss } from '../column.ts';
import { type ColumnTable, columnTable } from '../column-table.ts';
import type { Pool } from '../generate.ts';
import type { Instance } from '../instance.ts';

/** A column is in play if it is not dearer than even by more than this share of what its board is worth, and some small change. */
const mostLoss = 0.25;

/** A group is in play if some pattern of it loses less than this share of it. */
const nearlyPays = 0.05;

/** What a pattern of a group is worth about: its board's cost, and where boards cost nothing, what it brings at the prices. */
export function worthAbout({ groups }: Instance, { prices }: Pool, g: number): number {
  return groups[g]!.cost > 0 ? groups[g]!.cost : prices!.group[g]!;
}

/** The columns that may come into a good layout, those laid out now among them, and the order of how likely that is. */
export interface InPlay extends ColumnTable {
  readonly order: Int32Array;
}

/** Columns in play at the pool's prices. @param laid those of the layout to begin from */
export function columnsInPlay(instance: Instance, pool: Pool, laid: readonly Column[]): InPlay {
  const own = new Set(laid);
  const others = pool.columns.filter(
    (column) =>
      !own.has(column) &&
      columnLoss(column, pool.prices!) < mostLoss * worthAbout(instance, pool, column.group) + 1,
  );
  const table = columnTable([...own, ...others], instance.groups.length, instance.kinds.length);
  const lost = table.columns.map(
    (column) => columnLoss(column, pool.prices!) / (1e-9 + worthAbout(instance, pool, column.group)),
  );
  const order = Int32Array.from([...lost.keys()].sort((a, b) => lost[a]! - lost[b]! || a - b));
  return { ...table, order };
}

/** Groups that may come into a good layout: those laid out, and those of which some pattern nearly pays. */
export function groupsInPlay(instance: Instance, pool: Pool, laid: readonly Column[]): number[] {
  const near = new Set(laid.map(({ group }) => group));
  for (const column of pool.columns)
    if (columnLoss(column, pool.prices!) < nearlyPays * worthAbout(instance, pool, column.group))
      near.add(column.group);
  return [...near].sort((a, b) => a - b);
}
