import { doubled } from '../doubled.ts';

/**
 * Staircases, one after another in a store that grows: worths that only rise with the position. A staircase is the steps
 * `from` to `to` (exclusive): from position at[k] on it is worth value[k]; before its first step 0.
 */
export interface Stairs {
  at: Int32Array;
  value: Float64Array;
  /** Steps in use. */
  end: number;
}

/** A store without steps. */
export function openStairs(): Stairs {
  return { at: new Int32Array(256), value: new Float64Array(256), end: 0 };
}

/** Adds a step to the staircase that ends the store. */
export function pushStep(stairs: Stairs, at: number, value: number): void {
  if (stairs.end === stairs.at.length) {
    stairs.at = doubled(stairs.at);
    stairs.value = doubled(stairs.value);
  }
  stairs.at[stairs.end] = at;
  stairs.value[stairs.end] = value;
  stairs.end += 1;
}

/** Worth of a staircase at position p. O(steps behind p). */
export function stairsAt({ at, value }: Stairs, from: number, to: number, p: number): number {
  let k = to - 1;
  while (k >= from && at[k]! > p) k -= 1;
  return k < from ? 0 : value[k]!;
}

/** Worths offered at positions, kept until they are taken in ascending order: few of many, so the marks tell where. */
export interface Offers {
  /** Best worth offered at each position; 0 where there is none. */
  readonly worth: Float64Array;
  /** A bit for each position that has an offer. */
  readonly marks: Int32Array;
}

/** No offers yet, at `positions` positions. */
export function openOffers(positions: number): Offers {
  return { worth: new Float64Array(positions), marks: new Int32Array((positions >> 5) + 1) };
}

/** The first position ≥ `from` that has an offer; −1 when there is none. */
export function nextOffer(marks: Int32Array, from: number): number {
  let w = from >> 5;
  if (w >= marks.length) return -1;
  let word = marks[w]! & (-1 << (from & 31));
  while (word === 0) {
    w += 1;
    if (w >= marks.length) return -1;
    word = marks[w]!;
  }
  return (w << 5) + 31 - Math.clz32(word & -word);
}

/** Takes what is offered at a position: its worth, and no offer is left there. */
export function takeOffer({ worth, marks }: Offers, p: number): number {
  const here = worth[p]!;
  worth[p] = 0;
  marks[p >> 5] = marks[p >> 5]! & ~(1 << (p & 31));
  return here;
}

/**
 * Ends the store with a staircase made of its steps `from` to `to` and of all that is offered, which is taken.
 * @param isBeaten what is of no use by other means is left out
 */
export function mergeOffers(
  stairs: Stairs,
  offers: Offers,
  from: number,
  to: number,
  isBeaten: ((at: number, worth: number) => boolean) | null,
): void {
  let worth = 0;
  let k = from;
  let q = nextOffer(offers.marks, 0);
  while (q >= 0 || k < to) {
    const stepAt = k < to ? stairs.at[k]! : Infinity;
    const p = q >= 0 && q <= stepAt ? q : stepAt;
    let here = 0;
    if (p === stepAt) here = stairs.value[k++]!;
    if (p === q) {
      here = Math.max(here, takeOffer(offers, q));
      q = nextOffer(offers.marks, q + 1);
    }
    if (here <= worth || isBeaten?.(p, here) === true) continue;
    worth = here;
    pushStep(stairs, p, worth);
  }
}
