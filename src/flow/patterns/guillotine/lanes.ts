/**
 * Counts of the limited kinds packed into 32-bit words, so that two workpieces are added and compared a word
 * at a time. Each kind has a lane just wide enough for its cap and one guard bit above:
 *
 *     word:  | g ccc | g cc | g c | ...        c: count, g: guard, 0 in a stored count
 *
 * Adding two counts ≤ cap cannot carry out of the lane. Adding `room` = 2^bits − 1 − cap to a sum lights the
 * guard where the sum is over the cap. (a | guard) − b keeps the guard lit where a ≥ b.
 */
export interface Lanes {
  readonly words: number;
  /** The tracked kinds. */
  readonly kinds: Int32Array;
  /** For each kind: its word, or −1 when no pattern can hold more than its cap. */
  readonly word: Int32Array;
  readonly shift: Int32Array;
  /** For each kind: its lane, guard included, moved down to bit 0. */
  readonly mask: Int32Array;
  readonly guard: Int32Array;
  readonly room: Int32Array;
}

/**
 * @param caps of each kind, whole, ≥ 0
 * @param most of each kind that the plate could hold without caps; kinds that stay within their cap anyway
 * need no lane
 */
export function packLanes(caps: ArrayLike<number>, most: ArrayLike<number>): Lanes {
  const count = caps.length;
  const word = new Int32Array(count).fill(-1);
  const shift = new Int32Array(count);
  const mask = new Int32Array(count);
  const guard: number[] = [];
  const room: number[] = [];
  const kinds: number[] = [];
  let used = 32;
  for (let kind = 0; kind < count; kind++) {
    const cap = caps[kind]!;
    if (cap >= most[kind]! || most[kind]! === 0) continue;
    const bits = 32 - Math.clz32(cap);
    if (used + bits + 1 > 32) {
      guard.push(0);
      room.push(0);
      used = 0;
    }
    const last = guard.length - 1;
    kinds.push(kind);
    word[kind] = last;
    shift[kind] = used;
    mask[kind] = 2 ** (bits + 1) - 1;
    guard[last]! |= 1 << (used + bits);
    room[last]! |= (2 ** bits - 1 - cap) << used;
    used += bits + 1;
  }
  return {
    words: guard.length,
    kinds: Int32Array.from(kinds),
    word,
    shift,
    mask,
    guard: Int32Array.from(guard),
    room: Int32Array.from(room),
  };
}
