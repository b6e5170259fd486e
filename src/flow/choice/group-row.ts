import { type Column, countOf } from './column.ts';
import type { Instance } from './instance.ts';
import type { SideRow } from './master.ts';

/**
 * A linear restriction on how one group is used: Σ over its columns of (Σ_k coefficient_k a_k − perCopy) λ ≤ limit.
 * Caps (n_gk ≤ d_k per copy) and branching decisions (copies used, pieces of a kind on a group) all have this form.
 */
export interface GroupRow {
  readonly group: number;
  /** Kind whose count enters, or −1 when only copies count. */
  readonly kind: number;
  /** +1 or −1; of `beside`, what each piece counts for. */
  readonly sign: number;
  /** Taken off for each copy used. */
  readonly perCopy: number;
  readonly limit: number;
  /** Kinds whose counts enter together, in place of `kind`; the row may be missed, at a price of 1 for each unit. */
  readonly beside?: readonly number[];
}

function coefficientIn(row: GroupRow, column: Column): number {
  if (column.group !== row.group) return 0;
  if (row.beside !== undefined) return row.sign * countOf(column, row.beside) - row.perCopy;
  const at = column.kinds.indexOf(row.kind);
  const count = row.kind < 0 ? 1 : at < 0 ? 0 : column.counts[at]!;
  return row.sign * count - row.perCopy;
}

/** The restriction as a row of the master: its coefficient for each column. */
export function sideRow(row: GroupRow): SideRow {
  const coefficient = (column: Column): number => coefficientIn(row, column);
  return { coefficient, limit: row.limit, ...(row.beside === undefined ? {} : { priceAtMost: 1 }) };
}

/**
 * Rows by which a master counts what long pieces beside each other lose (see longBeside): of z ≥ Σ e (N − 1) λ, z costs what it
 * is. A mix of patterns is charged by the mean of its N, less than each by its own; so columns go in without that.
 */
export function besideRows({ groups }: Instance, rest: { readonly copies: ArrayLike<number> }): GroupRow[] {
  return groups.flatMap(({ beside }, group): GroupRow[] => {
    if (beside === null || rest.copies[group] === 0) return [];
    const { kinds, credit } = beside;
    return [{ group, kind: -1, sign: credit, perCopy: credit, limit: 0, beside: kinds }];
  });
}
