/**
 * The arithmetic of worths: how far apart the values of two patterns can be, and how finely multipliers may be
 * cut so that every sum stays exact.
 */
export interface Goal {
  /** Values of patterns are multiples of this; 0 when the worths are not whole numbers. */
  readonly grain: number;
  /** Below this a difference is rounding. */
  readonly tolerance: number;
  /** Multipliers are multiples of this power of two. */
  readonly quantum: number;
}

/**
 * Reads the worths.
 * @param most an upper bound on the value of any pattern
 *
 * With whole worths and multipliers in multiples of a power of two, every sum in the tables is a whole multiple of
 * it below 2^52, hence exact, and a bound may be rounded down to the next value that a pattern can have.
 */
export function goalOf(worth: ArrayLike<number>, most: number): Goal {
  let grain = 0;
  let whole = true;
  for (let kind = 0; kind < worth.length; kind++) {
    let a = Math.max(0, worth[kind]!);
    if (!Number.isSafeInteger(a)) whole = false;
    if (!whole) break;
    while (a > 0) [a, grain] = [grain % a, a];
  }
  const headroom = Math.floor(52 - Math.log2(Math.max(2, 4 * most)));
  const quantum = 2 ** -Math.min(20, headroom);
  const exact = whole && grain > 0 && quantum <= 0.25;
  return { grain: exact ? grain : 0, tolerance: exact ? 0 : 1e-9 * Math.max(1e-300, most), quantum };
}

/** The least value that is better than `value`: nothing between the two counts as better. */
export function above(goal: Goal, value: number): number {
  return goal.grain > 0 ? value + goal.grain : value + goal.tolerance;
}

/** The greatest value that is not at least `value`, to rounding. */
export function below(goal: Goal, value: number): number {
  return goal.grain > 0 ? value - goal.grain : value - goal.tolerance;
}

/** A bound brought down to a value that a pattern can have. */
export function tightened(goal: Goal, bound: number): number {
  return goal.grain > 0 ? Math.floor(bound / goal.grain) * goal.grain : bound;
}
