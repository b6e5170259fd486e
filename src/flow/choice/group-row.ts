import type { Column } from './column.ts';
import type { SideRow } from './master.ts';

/**
 * A linear restriction on how one group is used: Σ over its columns of (Σ_k coefficient_k a_k − perCopy) λ ≤ limit.
 * Caps (n_gk ≤ d_k per copy) and branching decisions (copies used, pieces of a kind on a group) all have this form.
 */
export interface GroupRow {
  readonly group: number;
  /** Kind whose count enters, or −1 when only copies count. */
  readonly kind: number;
  /** +1 or −1. */
  readonly sign: number;
  /** Taken off for each copy used. */
  readonly perCopy: number;
  readonly limit: number;
}

function coefficientIn(row: GroupRow, column: Column): number {
  if (column.group !== row.group) return 0;
  const at = column.kinds.indexOf(row.kind);
  const count = row.kind < 0 ? 1 : at < 0 ? 0 : column.counts[at]!;
  return row.sign * count - row.perCopy;
}

/** The restriction as a row of the master: its coefficient for each column. */
export function sideRow(row: GroupRow): SideRow {
  return { coefficient: (column) => coefficientIn(row, column), limit: row.limit };
}
