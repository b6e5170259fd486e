import { type Column, columnOf } from './column.ts';
import type { Alternative, Instance } from './instance.ts';
import { type Rest, fitsRest, wholeRest } from './generate.ts';

/** Columns chosen, one per board copy used, in the order they were fixed. An incumbent is the best plan so far. */
export interface Plan {
  readonly columns: readonly Column[];
  /** Cost of the boards plus the penalties of the pieces left out: what the master minimises. */
  readonly objective: number;
  readonly missing: Int32Array;
}

/** The plan these columns make, with what it costs and what it leaves out. */
export function planOf(instance: Instance, columns: readonly Column[]): Plan {
  const missing = Int32Array.from(instance.kinds, (kind) => kind.demand);
  let objective = 0;
  for (const column of columns) {
    objective += column.cost;
    column.kinds.forEach((kind, i) => (missing[kind] = missing[kind]! - column.counts[i]!));
  }
  for (const alternative of instance.alternatives ?? []) settleMissing(instance, alternative, missing);
  instance.kinds.forEach((kind, k) => (objective += kind.penalty * Math.max(0, missing[k]!)));
  return { columns, objective, missing };
}

/** Of an alternative that the copies it lacks are missing, as made in the first way. */
function settleMissing({ kinds }: Instance, { copies, ways }: Alternative, missing: Int32Array): void {
  const made = ways.map(({ kind, strips }) => Math.floor((kinds[kind]!.demand - missing[kind]!) / strips));
  for (const { kind } of ways) missing[kind] = 0;
  const { kind, strips } = ways[0]!;
  missing[kind] = strips * Math.max(0, copies - made.reduce((sum, each) => sum + each, 0));
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
  return columns.flatMap((column) => {
    const wanted = column.placements.filter(({ kind }) => {
      left[kind] = left[kind]! - 1;
      return left[kind]! >= 0;
    });
    if (wanted.length === column.placements.length) return [column];
    return wanted.length === 0 ? [] : [columnOf(column.group, wanted, instance.groups[column.group]!)];
  });
}
