import type { LengthUnit } from './read-length.ts';
import { type Tick, ticksPerInch, ticksPerMillimetre } from './tick.ts';

/** How lengths are printed; a shop's settings are one. `printFraction`: inches to the nearest 1/printFraction. */
export interface LengthStyle {
  readonly units: LengthUnit;
  /** Whole, 1 to 64. */
  readonly printFraction: number;
}

/**
 * A length for people, without its unit: inches as reduced fractions (`63 1/2`), millimetres to 0.1 (`1612.9`).
 * `~` stands in front when rounding changed the value; a half goes away from zero.
 * @example formatLength(inches(63.5), { units: 'in', printFraction: 32 }) // '63 1/2'
 */
export function formatLength(length: Tick, style: LengthStyle): string {
  const inMillimetres = style.units === 'mm';
  const stepsPerUnit = inMillimetres ? 10 : style.printFraction;
  const scaled = Math.abs(length) * stepsPerUnit;
  const ticksPerUnit = inMillimetres ? ticksPerMillimetre : ticksPerInch;
  const steps = Math.round(scaled / ticksPerUnit);
  const about = steps * ticksPerUnit === scaled ? '' : '~';
  const sign = length < 0 && steps > 0 ? '-' : '';
  return `${about}${sign}${inMillimetres ? String(steps / 10) : mixedNumber(steps, stepsPerUnit)}`;
}

/**
 * The same with its unit: `63 1/2"`, `1612.9 mm`.
 * @example formatLengthWithUnit(inches(63.5), { units: 'in', printFraction: 32 }) // '63 1/2"'
 */
export function formatLengthWithUnit(length: Tick, style: LengthStyle): string {
  return `${formatLength(length, style)}${style.units === 'mm' ? ' mm' : '"'}`;
}

/**
 * steps / stepsPerUnit as a whole number and a reduced fraction.
 * @param steps whole, ≥ 0   @param stepsPerUnit whole, > 0
 * @example mixedNumber(2032, 32) // '63 1/2'
 */
export function mixedNumber(steps: number, stepsPerUnit: number): string {
  const whole = Math.floor(steps / stepsPerUnit);
  const rest = steps % stepsPerUnit;
  if (rest === 0) return String(whole);
  const divisor = greatestCommonDivisor(rest, stepsPerUnit);
  const fraction = `${rest / divisor}/${stepsPerUnit / divisor}`;
  return whole === 0 ? fraction : `${whole} ${fraction}`;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
