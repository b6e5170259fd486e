import { doubled } from '../doubled.ts';
import type { Lanes } from './lanes.ts';

/**
 * Labels: each is a set of pieces that some workpiece can hold within all caps, with the way to cut it (a
 * node of `Trees`). Parallel arrays that grow; a label is its index.
 */
export interface LabelStore {
  count: number;
  /** Sum of worth. */
  worth: Float64Array;
  /** Sum of worth less multipliers: what the bounds count. */
  gain: Float64Array;
  /** Sum of worth of the kinds without a lane. */
  free: Float64Array;
  left: Int32Array;
  right: Int32Array;
  rip: Int32Array;
  born: Int32Array;
  /** `words` entries per label: its counts in lanes. */
  vector: Int32Array;
}

/** An empty store. */
export function labelStore(lanes: Lanes, capacity: number): LabelStore {
  return {
    count: 0,
    worth: new Float64Array(capacity),
    gain: new Float64Array(capacity),
    free: new Float64Array(capacity),
    left: new Int32Array(capacity),
    right: new Int32Array(capacity),
    rip: new Int32Array(capacity),
    born: new Int32Array(capacity),
    vector: new Int32Array(capacity * lanes.words),
  };
}

/** Doubles the room of a store, its labels kept. */
export function growStore(store: LabelStore): void {
  store.worth = doubled(store.worth);
  store.gain = doubled(store.gain);
  store.free = doubled(store.free);
  store.left = doubled(store.left);
  store.right = doubled(store.right);
  store.rip = doubled(store.rip);
  store.born = doubled(store.born);
  store.vector = doubled(store.vector);
}

/** Copies label `from` of one store over label `to` of another. */
export function copyLabel(
  source: LabelStore,
  from: number,
  target: LabelStore,
  to: number,
  words: number,
): void {
  target.worth[to] = source.worth[from]!;
  target.gain[to] = source.gain[from]!;
  target.free[to] = source.free[from]!;
  target.left[to] = source.left[from]!;
  target.right[to] = source.right[from]!;
  target.rip[to] = source.rip[from]!;
  target.born[to] = source.born[from]!;
  for (let word = 0; word < words; word++) {
    target.vector[to * words + word] = source.vector[from * words + word]!;
  }
}

/**
 * Whether label a of one store makes label b of another needless: it holds at least as many of each kind
 * with a lane, and as much worth of the others. (Whatever can be added to b can be added to a, if need be
 * in place of pieces that a holds beyond b.)
 */
export function dominates(
  storeA: LabelStore,
  a: number,
  storeB: LabelStore,
  b: number,
  guard: Int32Array,
): boolean {
  if (storeA.free[a]! < storeB.free[b]!) return false;
  const words = guard.length;
  const baseA = a * words;
  const baseB = b * words;
  for (let word = 0; word < words; word++) {
    const lit = guard[word]!;
    if ((((storeA.vector[baseA + word]! | lit) - storeB.vector[baseB + word]!) & lit) !== lit) return false;
  }
  return true;
}
