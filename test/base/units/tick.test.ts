import { describe, expect, it } from 'vitest';
import { type Tick, inches, longestLength, millimetres, ticks } from '../../../src/base/units/tick.ts';

describe('ticks', () => {
  it('are whole', () => {
    expect(ticks(-3)).toBe(-3);
    expect(() => ticks(0.5)).toThrow('not a whole number of ticks: 0.5');
    expect(() => ticks(Number.NaN)).toThrow(RangeError);
    expect(() => ticks(2 ** 53)).toThrow(RangeError);
  });

  // The international inch is 25.4 mm exactly (1959 agreement), so both steps are whole: 8128 = 25.4 × 320.
  it('hold 1/64 in and 0.1 mm exactly', () => {
    expect(inches(1 / 64)).toBe(127);
    expect(millimetres(0.1)).toBe(32);
    expect(inches(1)).toBe(millimetres(25.4));
    expect(() => inches(1 / 3)).toThrow(RangeError);
  });

  it('of the longest length have an exact square', () => {
    expect(Number.isSafeInteger(longestLength * longestLength)).toBe(true);
  });

  it('are no plain numbers to the compiler', () => {
    // @ts-expect-error a number is not a length until it is said to be one
    const length: Tick = 5;
    expect(length).toBe(5);
  });
});
