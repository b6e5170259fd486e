import { wholeRest } from './generate.ts';
import type { GroupRow } from './group-row.ts';
import type { Alternative, Instance } from './instance.ts';

/** A node of the search: the decisions that lead to it and the bound it inherits. */
export interface SearchNode {
  readonly copies: Int32Array;
  readonly rows: readonly GroupRow[];
  /** How the copies of alternatives may be made here. */
  readonly alternatives: readonly Alternative[];
  readonly bound: number;
  readonly depth: number;
}

/** The node at which nothing is decided yet. */
export function rootNode(instance: Instance, bound: number): SearchNode {
  const { copies } = wholeRest(instance);
  return { copies, rows: [], alternatives: instance.alternatives ?? [], bound, depth: 0 };
}

/** Distance from a whole number below which a use counts as whole. */
export const wholeTolerance = 1e-6;

/** How far a value lies from the nearest whole number. */
export function fraction(value: number): number {
  return Math.abs(value - Math.round(value));
}
