declare const tick: unique symbol;

/**
 * A length in whole ticks, the one unit of all geometry: 1 tick = 3.125 µm, the largest unit in which
 * 1/64 in (127 ticks) and 0.1 mm (32 ticks) are both exact.
 */
export type Tick = number & { readonly [tick]: 'length' };

/** 1 in = 25.4 mm exactly (international inch), so 8128 = 25.4 × 320. */
export const ticksPerInch = 8128;
export const ticksPerMillimetre = 320;

/**
 * Brands a whole number as a length.
 * @param value whole number of ticks, any sign
 * @throws RangeError when the value is not a safe whole number: only a bug of ours can cause that.
 */
export function ticks(value: number): Tick {
  if (!Number.isSafeInteger(value)) throw new RangeError(`not a whole number of ticks: ${value}`);
  return value as Tick;
}

/** Whole inches (or an exact binary fraction of them) as ticks. Throws when the result is not whole. */
export function inches(value: number): Tick {
  return ticks(value * ticksPerInch);
}

/** Millimetres in steps of 0.1 as ticks. Throws when the result is not whole. */
export function millimetres(value: number): Tick {
  return ticks(Math.round(value * 10) * (ticksPerMillimetre / 10));
}

/** The longest length taken in, 10,000 in (254 m): its square is still an exact number, so every area is. */
export const longestLength: Tick = inches(10_000);
