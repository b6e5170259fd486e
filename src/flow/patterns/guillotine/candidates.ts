import type { LabelStore } from './label-store.ts';
import { doubled } from '../doubled.ts';
import { copyLabel, dominates, growStore, labelStore } from './label-store.ts';
import type { Lanes } from './lanes.ts';

/** Labels gathered for one state before the best of them are kept. */
export interface Candidates {
  readonly lanes: Lanes;
  labels: LabelStore;
  spare: LabelStore;
  /** For each candidate, the stored label it is, or −1 when it is new. */
  origin: Int32Array;
  spareOrigin: Int32Array;
  /** Hash table of slots by vector; an entry counts when its stamp is the current one. */
  slots: Int32Array;
  stamps: Int32Array;
  stamp: number;
  /** Slots by rank, while settling. */
  order: Int32Array;
  room: number;
  /** Work done, in comparisons. */
  steps: number;
}

/** Empty candidates. */
export function candidates(lanes: Lanes): Candidates {
  const room = 512;
  return {
    lanes,
    labels: labelStore(lanes, room),
    spare: labelStore(lanes, room),
    origin: new Int32Array(room),
    spareOrigin: new Int32Array(room),
    slots: new Int32Array(2 * room),
    stamps: new Int32Array(2 * room),
    stamp: 0,
    order: new Int32Array(room),
    room,
    steps: 0,
  };
}

/** Forgets all candidates. */
export function clearCandidates(set: Candidates): void {
  set.labels.count = 0;
  set.stamp += 1;
}

/**
 * Takes in the label whose vector is written at slot `labels.count`, unless an equal one is there with as much `free`.
 * There must be a free slot.
 * @returns the slot, for the caller to write the rest of the label; −1 when it was not taken
 */
export function admit(set: Candidates, free: number): number {
  const { labels, slots, stamps, stamp } = set;
  const words = set.lanes.words;
  const vector = labels.vector;
  const slot = labels.count;
  let hash = 0;
  for (let word = 0; word < words; word++)
    hash = Math.imul(hash ^ vector[slot * words + word]!, 0x9e3779b1) ^ (hash >>> 15);
  const wrap = slots.length - 1;
  let at = (hash ^ (hash >>> 16)) & wrap;
  for (; stamps[at] === stamp; at = (at + 1) & wrap) {
    const other = slots[at]!;
    let equal = true;
    for (let word = 0; word < words && equal; word++) {
      equal = vector[other * words + word] === vector[slot * words + word];
    }
    if (!equal) continue;
    if (labels.free[other]! >= free) return -1;
    break;
  }
  stamps[at] = stamp;
  slots[at] = slot;
  labels.free[slot] = free;
  labels.count = slot + 1;
  return slot;
}

/** Makes room for twice as many. */
function growCandidates(set: Candidates): void {
  growStore(set.labels);
  growStore(set.spare);
  set.origin = doubled(set.origin);
  set.spareOrigin = doubled(set.spareOrigin);
  set.order = doubled(set.order);
  set.slots = new Int32Array(2 * set.slots.length);
  set.stamps = new Int32Array(2 * set.stamps.length);
  set.room *= 2;
}

/**
 * Brings the candidates down to those that no other dominates, the most gainful first, at most `keep`.
 * @returns the gain of the last kept when some were dropped for want of room, else −Infinity
 */
export function settle(set: Candidates, keep: number): number {
  const { labels, spare, lanes } = set;
  const count = labels.count;
  sortByGain(set);
  let kept = 0;
  let dropped = -Infinity;
  for (let rank = 0; rank < count; rank++) {
    const slot = set.order[rank]!;
    let needless = false;
    let other = 0;
    for (; other < kept && !needless; other++) {
      needless = dominates(spare, other, labels, slot, lanes.guard);
    }
    set.steps += other + 8;
    if (needless) continue;
    if (kept >= keep) {
      dropped = spare.gain[kept - 1]!;
      break;
    }
    copyLabel(labels, slot, spare, kept, lanes.words);
    set.spareOrigin[kept] = set.origin[slot]!;
    kept += 1;
  }
  spare.count = kept;
  set.labels = spare;
  set.spare = labels;
  const origin = set.origin;
  set.origin = set.spareOrigin;
  set.spareOrigin = origin;
  return dropped;
}

/** Fills `order` with the slots, the most gainful first, then the most worth, then the oldest. */
function sortByGain(set: Candidates): void {
  const { order } = set;
  const { gain, worth, count } = set.labels;
  const compare = (a: number, b: number): number => gain[b]! - gain[a]! || worth[b]! - worth[a]! || a - b;
  if (count > 32) {
    for (let at = 0; at < count; at++) order[at] = at;
    order.subarray(0, count).sort(compare);
    return;
  }
  for (let at = 0; at < count; at++) {
    let to = at;
    for (; to > 0 && compare(at, order[to - 1]!) < 0; to--) order[to] = order[to - 1]!;
    order[to] = at;
  }
}

/** Settles a full set, makes room when that was not enough, and lists the rest anew in the hash table. */
export function makeRoom(set: Candidates, keep: number): number {
  const dropped = settle(set, keep);
  if (2 * set.labels.count > set.room) growCandidates(set);
  const count = set.labels.count;
  set.stamp += 1;
  const { labels, origin, lanes } = set;
  labels.count = 0;
  for (let slot = 0; slot < count; slot++) {
    const to = labels.count;
    if (to < slot) copyLabel(labels, slot, labels, to, lanes.words);
    if (admit(set, labels.free[slot]!) >= 0) origin[to] = origin[slot]!;
  }
  return dropped;
}
