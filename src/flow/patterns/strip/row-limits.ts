import type { ClearPlate } from './clear-plate.ts';
import type { Pricing } from './frame.ts';
import { ceilIndex } from './raster.ts';
import { reachOf } from './raster-plate.ts';

/** The position of the section's end from which a promise counts; the number of positions: none. Lengths are whole ticks. */
function firstEnd(xs: Float64Array, reach: number, start: number, over: number): number {
  const at = ceilIndex(xs, xs[start]! + over + 1);
  return at === xs.length ? at : Math.max(start + 1, at - reach);
}

/** The last position from `from` on at which gain and tail still promise more than enough, as they do at `from`; the tail only falls. */
function lastPromising(tail: Float64Array, from: number, least: number): number {
  let low = from;
  let high = tail.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (tail[middle]! > least) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Work of a step whose place is looked for. */
const workPerStep = 6;

/**
 * Limits the rows of each width to where a section from `start` that has such a row may, with what lies behind it,
 * be worth more than `enough`: to its clear row, the best beside that, and the clear tail.
 * @returns the most that what is left out promises; −Infinity: nothing is
 */
export function limitToPromising(
  { raster, memory, meter }: Pricing,
  { tail, strips }: ClearPlate,
  start: number,
  enough: number,
): number {
  const { xs } = raster;
  const reach = reachOf(raster);
  let leftOut = -Infinity;
  for (const { band, over, gain } of strips) {
    let until = -1;
    // From the longest section on: what a shorter one promises beyond it has less tail.
    for (let k = over.length - 1; k >= 0; k -= 1) {
      const from = firstEnd(xs, reach, start, over[k]!);
      if (from >= xs.length) continue;
      meter.spent += workPerStep;
      const least = enough - gain[k]!;
      if (tail[from]! > least) until = Math.max(until, lastPromising(tail, from, least));
      const behind = Math.max(from, until + 1);
      if (behind < xs.length) leftOut = Math.max(leftOut, gain[k]! + tail[behind]!);
    }
    memory.until[band] = until;
  }
  return leftOut;
}

/** Limits the rows of all widths to the section's end. */
export function limitToEnd({ memory }: Pricing, end: number): void {
  memory.until.fill(end);
}

/** Share of a section's worth by which sums of the same pieces may differ. */
const rounding = 1e-9;

/** Limits the rows to those that a section of this worth can have: to its end, and of widths with which one so long can be worth as much. */
export function limitToSection(
  { raster, memory }: Pricing,
  { strips }: ClearPlate,
  { start, end, worth }: { readonly start: number; readonly end: number; readonly worth: number },
): void {
  const { xs } = raster;
  const last = xs.length - 1;
  const length = xs[Math.min(last, end + reachOf(raster))]! - xs[start]!;
  for (const { band, over, gain } of strips) {
    let k = over.length - 1;
    while (k >= 0 && over[k]! >= length) k -= 1;
    memory.until[band] = k >= 0 && gain[k]! >= worth * (1 - rounding) ? end : -1;
  }
}
