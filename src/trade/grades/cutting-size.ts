import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { ticksPerInch } from '../../base/units/tick.ts';

/** A least size of cutting: at least this wide and this long along the board, in ticks. */
export interface LeastSize {
  readonly width: number;
  readonly length: number;
}

/** What a grade asks of one cutting: any one of the least sizes, and for 3B a least area. */
export interface CuttingSize {
  readonly leastSizes: readonly LeastSize[];
  /** Square ticks; 0 where the sizes say all. */
  readonly leastArea: number;
}

/** One cutting unit is 1 in × 1 ft: 12 of them to a surface foot (TRADE 2.1). In square ticks. */
export const cuttingUnit = 12 * ticksPerInch * ticksPerInch;

/** Cutting units of an area in square ticks, fractions kept. */
export function cuttingUnits(area: number): number {
  return area / cuttingUnit;
}

/** Whether a rectangle is large enough to count as a cutting. */
export function isCutting(rectangle: Rectangle, size: CuttingSize): boolean {
  return (
    rectangle.length * rectangle.width >= size.leastArea &&
    size.leastSizes.some((least) => rectangle.width >= least.width && rectangle.length >= least.length)
  );
}

/** The shortest that a cutting of at most this width can be; Infinity when it is too narrow for any. */
export function leastLength(width: number, size: CuttingSize): number {
  let least = Infinity;
  for (const sized of size.leastSizes) if (width >= sized.width) least = Math.min(least, sized.length);
  return size.leastArea === 0 ? least : Math.max(least, Math.ceil(size.leastArea / width));
}

/** The narrowest that a cutting of at most this length can be; Infinity when it is too short for any. */
export function leastWidth(length: number, size: CuttingSize): number {
  let least = Infinity;
  for (const sized of size.leastSizes) if (length >= sized.length) least = Math.min(least, sized.width);
  return size.leastArea === 0 ? least : Math.max(least, Math.ceil(size.leastArea / length));
}
