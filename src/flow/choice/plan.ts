import { type Column, columnOf } from './column.ts';
import type { Instance } from './instance.ts';
import { type Rest, fitsRest, wholeRest } from './generate.ts';
import { copiesMade } from './ways.ts';

/** Columns chosen, one per board copy used, in the order they were fixed. An incumbent is the best plan so far. */
export interface Plan {
  readonly columns: readonly Column[];
  /** Cost of the boards plus the penalties of the pieces left out: what the master minimises. */
  readonly objective: number;
  readonly missing: Int32Array;
}

/** The plan these columns make, with what it costs and what it leaves out. */
export function planOf(instance: Instance, columns: readonly Column[]): Plan {
  const cut = piecesCut(instance, columns);
  const missing = Int32Array.from(instance.kinds, (kind, k) => kind.demand - cut[k]!);
  let objective = columns.reduce((sum, { cost }) => sum + cost, 0);
  // Of an alternative the copies it lacks are missing, as made in the first way.
  const made = copiesMade(instance, cut);
  instance.alternatives?.forEach(({ copies, ways }, a) => {
    for (const { kind } of ways) missing[kind] = 0;
    const lacking = copies - made[a]!.reduce((sum, each) => sum + each, 0);
    missing[ways[0]!.kind] = ways[0]!.strips * Math.max(0, lacking);
  });
  instance.kinds.forEach((kind, k) => (objective += kind.penalty * Math.max(0, missing[k]!)));
  return { columns, objective, missing };
}

/** Pieces cut of each kind. */
export function piecesCut({ kinds }: Instance, columns: readonly Column[]): Int32Array {
  const cut = new Int32Array(kinds.length);
  for (const column of columns)
    column.kinds.forEach((kind, i) => (cut[kind] = cut[kind]! + column.counts[i]!));
  return cut;
}

/** Copies that the columns make in each way, by alternative. */
export function waysOf(instance: Instance, columns: readonly Column[]): number[][] {
  return copiesMade(instance, piecesCut(instance, columns));
}

/** Takes the column off what is left. */
export function spend(rest: Rest, column: Column): void {
  rest.copies[column.group] = rest.copies[column.group]! - 1;
  column.kinds.forEach((kind, i) => (rest.demand[kind] = rest.demand[kind]! - column.counts[i]!));
}

/** What is left when these columns are cut. */
export function restAfter(instance: Instance, columns: readonly Column[]): Rest {
  const rest = wholeRest(instance);
  for (const column of columns) spend(rest, column);
  return rest;
}

/** Whether nothing is wanted any more. */
export function isDone(rest: Rest): boolean {
  return rest.demand.every((count) => count <= 0);
}

/** How many copies of the column can be cut from what is left. */
export function timesInRest(column: Column, rest: Rest): number {
  if (!fitsRest(column, rest)) return 0;
  return column.kinds.reduce(
    (times, kind, i) => Math.min(times, Math.floor(rest.demand[kind]! / column.counts[i]!)),
    rest.copies[column.group]!,
  );
}

/**
 * The columns without the pieces that are wanted no more: the master may cover a kind more often than asked, and a
 * blank not cut is only wood left over. Columns left empty are dropped with their boards.
 */
export function withoutSurplus(instance: Instance, columns: readonly Column[]): Column[] {
  const left = wholeRest(instance).demand;
  // Of strips those that make whole copies are wanted.
  const made = waysOf(instance, columns);
  instance.alternatives?.forEach(({ ways }, a) =>
    ways.forEach(({ kind, strips, laid }, w) => (left[kind] = Math.max(0, strips * made[a]![w]! - laid))),
  );
  return columns.flatMap((column) => {
    const wanted = column.placements.filter(({ kind }) => {
      left[kind] = left[kind]! - 1;
      return left[kind]! >= 0;
    });
    if (wanted.length === column.placements.length) return [column];
    return wanted.length === 0 ? [] : [columnOf(column.group, wanted, instance.groups[column.group]!)];
  });
}
