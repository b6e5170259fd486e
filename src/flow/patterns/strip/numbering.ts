import { doubled } from '../doubled.ts';

/**
 * Lists of whole numbers, each distinct one under a number of its own, in the order in which they turned up. They lie in memory
 * that is used again once they are forgotten: of very many boards it would else be most of what has to be collected.
 */
export interface Numbering {
  /** Entries of all lists, one after another, and behind them those of the list in the making. Replaced when it grows. */
  lists: Float64Array;
  /** Of list i the entries from[i] up to from[i + 1]. Replaced when it grows. */
  from: Int32Array;
  /** How many lists there are. */
  count: number;
  /** Behind the last entry put. */
  end: number;
  /** By number, a hash of the list. Replaced when it grows. */
  hashes: Int32Array;
  /** Number + 1 of a list at the place its hash says, or at the next free one; 0: free. At most half are taken. */
  slots: Int32Array;
}

/** No lists yet. */
export function openNumbering(): Numbering {
  return {
    lists: new Float64Array(64),
    from: new Int32Array(17),
    count: 0,
    end: 0,
    hashes: new Int32Array(16),
    slots: new Int32Array(32),
  };
}

/** Forgets all lists; their memory is kept. */
export function forgetLists(numbering: Numbering): void {
  numbering.count = 0;
  numbering.end = 0;
  numbering.slots.fill(0);
}

/** Adds an entry to the list in the making. */
export function put(numbering: Numbering, entry: number): void {
  if (numbering.end === numbering.lists.length) numbering.lists = doubled(numbering.lists);
  numbering.lists[numbering.end] = entry;
  numbering.end += 1;
}

/** Ends the list in the making, and tells its number: a new one when it is not known yet. */
export function numberPut(numbering: Numbering): number {
  const { lists, from, hashes, count, end } = numbering;
  const hash = hashOf(lists, from[count]!, end);
  const last = numbering.slots.length - 1;
  let at = hash & last;
  for (let slot = numbering.slots[at]!; slot !== 0; slot = numbering.slots[at]!) {
    if (hashes[slot - 1] === hash && isPutAgain(numbering, slot - 1)) {
      numbering.end = from[count]!;
      return slot - 1;
    }
    at = (at + 1) & last;
  }
  if (count === hashes.length) {
    numbering.from = doubled(from);
    numbering.hashes = doubled(hashes);
  }
  numbering.hashes[count] = hash;
  numbering.count = count + 1;
  numbering.from[count + 1] = end;
  // The place found is no longer the one where the places have been dealt anew.
  if (2 * (count + 1) > numbering.slots.length) dealSlots(numbering);
  else numbering.slots[at] = count + 1;
  return count;
}

/** FNV-1a over whole numbers instead of bytes (Fowler, Noll and Vo 1991), its high bits mixed into the low ones. */
function hashOf(lists: Float64Array, from: number, to: number): number {
  let hash = 0x811c9dc5 | 0;
  for (let i = from; i < to; i += 1) hash = Math.imul(hash ^ lists[i]!, 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x01000193);
  return hash ^ (hash >>> 15);
}

/** Whether the list in the making is the one of this number. */
function isPutAgain({ lists, from, count, end }: Numbering, number: number): boolean {
  const [begin, own] = [from[number]!, from[count]!];
  if (from[number + 1]! - begin !== end - own) return false;
  for (let i = own; i < end; i += 1) if (lists[begin + i - own] !== lists[i]) return false;
  return true;
}

function dealSlots(numbering: Numbering): void {
  const { hashes, count } = numbering;
  const slots = new Int32Array(2 * numbering.slots.length);
  const last = slots.length - 1;
  for (let number = 0; number < count; number += 1) {
    let at = hashes[number]! & last;
    while (slots[at] !== 0) at = (at + 1) & last;
    slots[at] = number + 1;
  }
  numbering.slots = slots;
}
