import type { Axis } from './axis.ts';

/** What may be cut at a level in one direction: nothing, waste only, or parts. */
export const noCut = 0;
export const wasteOnly = 1;
export const anyCut = 2;

/**
 * Every workpiece that a plate may come apart into, and every way to cut each: the states of the dynamic
 * programs. A state is (level, column, row): a column is an interval along the plate, a row one across it.
 * Its number is (level × columns + column) × rows + row; the root is the last.
 *
 * A level says how many stages are left. With no limit there is one level that allows both cuts; with n
 * stages there are n + 1, and a state of a level may always stand as it is on the level above. Crosscuts
 * split the column and leave the row, rips split the row and leave the column.
 */
export interface Net {
  readonly columns: Axis;
  readonly rows: Axis;
  readonly levels: number;
  /** For each level, what crosscuts may do: `noCut`, `wasteOnly` or `anyCut`. */
  readonly crosscuts: Uint8Array;
  readonly rips: Uint8Array;
  /** Columns smaller than this are not ripped; ticks, kerf included. */
  readonly ripFrom: number;
  readonly crosscutKerf: number;
  readonly ripKerf: number;
  /** Whether a workpiece is a place (defects) or only a size. */
  readonly placed: boolean;
  /** Pieces that a state holds, by ascending state. */
  readonly leaves: Leaves;
}

/**
 * Parallel arrays: the piece `kind` under its `clearance` is all that `state` holds. Where it leaves waste beside it, the
 * state's level is one that still has the cuts to free it. Its sizes are in ticks without kerf.
 */
export interface Leaves {
  readonly state: Int32Array;
  readonly kind: Int32Array;
  readonly clearance: Int32Array;
  readonly length: Int32Array;
  readonly width: Int32Array;
  /** How far above the state's near edge it lies: not 0 for runs alone, which keep wide strips to themselves. */
  readonly offset: Int32Array;
}

/** States of one level. */
export function statesPerLevel(net: Pick<Net, 'columns' | 'rows'>): number {
  return net.columns.count * net.rows.count;
}

/** All states, the length of the tables. */
export function stateCount(net: Net): number {
  return net.levels * statesPerLevel(net);
}

/** About how many elementary steps one pass over all states and splits takes. */
export function passWork(columns: Axis, rows: Axis, levels: number): number {
  const crossing = columns.first.length * rows.count;
  const ripping = rows.first.length * columns.count;
  return (crossing + ripping + 3 * columns.count * rows.count) * levels;
}
