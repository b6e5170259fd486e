/** A stream of random numbers from a seed: the same seed gives the same stream everywhere. */
export interface Seeded {
  /** A float, 0 ≤ value < 1. */
  readonly next: () => number;
  /** A whole number, least ≤ value ≤ most. */
  readonly whole: (least: number, most: number) => number;
  /** One of the given values, which must not be empty. */
  readonly pick: <T>(values: readonly T[]) => T;
  /** True with the given chance, 0 to 1. */
  readonly chance: (share: number) => boolean;
}

/** SplitMix-style 32-bit generator: state advanced by the golden ratio, mixed by two multiplications. */
export function seeded(seed: number): Seeded {
  let state = Math.imul(seed ^ 0x5bd1e995, 0x9e3779b1) | 0;
  const next = (): number => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 4294967296;
  };
  const whole = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  const pick = <T>(values: readonly T[]): T => values[whole(0, values.length - 1)] as T;
  return { next, whole, pick, chance: (share) => next() < share };
}
