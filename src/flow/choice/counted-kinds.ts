import { type Counted, usesOf } from '../patterns/strip/counted/counting.ts';
import type { Pricer } from '../patterns/strip/strip-pricer.ts';
import type { Column } from './column.ts';
import type { Instance } from './instance.ts';

/**
 * Kinds counted while a plate is priced, so that no pattern of it uses them too often: those that a master's patterns
 * did use too often, since counting all would cost too much (decremental state space, Righini and Salani 2008).
 */
export type CountedKinds = Map<Pricer, number[]>;

/** Most uses told apart on one plate. */
const mostUses = 12;

/** The kinds counted on a plate, with what is wanted of them. */
export function countedOn(counted: CountedKinds, pricer: Pricer, demand: ArrayLike<number>): Counted[] {
  return (counted.get(pricer) ?? []).map((kind) => ({ kind, cap: Math.max(0, demand[kind]!) }));
}

/** How many there are in all: it only rises. */
export function countedInAll(counted: CountedKinds): number {
  let all = 0;
  for (const kinds of counted.values()) all += kinds.length;
  return all;
}

/** Whether the column uses a kind too often that is counted on its plate by now. */
export function isOvercounted(
  { groups }: Instance,
  counted: CountedKinds,
  demand: ArrayLike<number>,
  column: Column,
): boolean {
  const kinds = counted.get(groups[column.group]!.pricer);
  if (kinds === undefined) return false;
  return column.kinds.some((kind, i) => column.counts[i]! > demand[kind]! && kinds.includes(kind));
}

/** Counts, from now on, the kinds that columns in use have too many of; says whether there were any that may still be counted. */
export function countMore(
  { groups }: Instance,
  counted: CountedKinds,
  demand: ArrayLike<number>,
  columns: readonly Column[],
  use: Float64Array,
): boolean {
  let isMore = false;
  columns.forEach((column, c) => {
    if (use[c]! < 1e-6) return;
    const { pricer } = groups[column.group]!;
    if (!pricer.canCount()) return;
    column.kinds.forEach((kind, i) => {
      const kinds = counted.get(pricer) ?? [];
      if (column.counts[i]! <= demand[kind]! || kinds.includes(kind)) return;
      const more = [...kinds, kind];
      if (usesOf(more.map((k) => ({ kind: k, cap: Math.max(0, demand[k]!) }))) > mostUses) return;
      counted.set(pricer, more);
      isMore = true;
    });
  });
  return isMore;
}
