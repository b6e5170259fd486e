import { type ClearPlate, clearPlate } from './clear-plate.ts';
import type { Pricing } from './frame.ts';
import { stackStrips } from './heights.ts';
import { limitToPromising } from './row-limits.ts';
import { fillRows } from './rows.ts';
import { eachSection } from './section-steps.ts';

/** The best ways to cut the plate into sections, as far as the DP went. */
export interface Sections {
  /** worth[p] = most worth of whole sections that end by position p. */
  readonly worth: Float64Array;
  /** Start of the last section of that best; −1 for none; −1 − p where the best is that of the earlier position p. */
  readonly from: Int32Array;
  /** An upper bound on the worth of any pattern: the value found, or what the starts left unopened still promise. */
  readonly bound: number;
  /** What the clear plate promised. */
  readonly clear: ClearPlate;
}

/** The open start whose worth before it plus clear tail behind it is greatest; −1 when none is left. O(positions). */
function mostPromising(worth: Float64Array, tail: Float64Array, open: Uint8Array, first: number): number {
  let best = -1;
  let most = 0;
  let earlier = -1;
  for (let p = first; p < worth.length - 1; p += 1) {
    if (worth[p]! <= earlier) continue;
    earlier = worth[p]!;
    if (open[p] === 1 && worth[p]! + tail[p]! > most) {
      most = worth[p]! + tail[p]!;
      best = p;
    }
  }
  return best;
}

/**
 * Cuts the plate behind position `first` into sections, best first (A*): the start whose worth before it plus
 * the clear tail behind it promises most is opened, all sections from it are priced, and so on until the end of
 * the plate is itself the most promising, nothing promises more than `target`, or `mostStarts` are opened.
 * A row is filled only as far as the section may still promise more than is found or asked for.
 * A start is considered only where the worth before it rises: an earlier one with the same worth has more room.
 * With caps the rows are good rather than best, so `bound` then holds for no pattern but the one found.
 * @param slack by how much what is found may fall short of the bound
 * @param isClose whether a bound below the target is to be no higher than need be: then rows are limited by what is found alone
 */
export function cutSections(
  pricing: Pricing,
  first: number,
  target: number,
  mostStarts: number,
  slack = 0,
  isClose = false,
): Sections {
  const n = pricing.raster.xs.length;
  const clear = clearPlate(pricing);
  const { tail } = clear;
  const worth = new Float64Array(n);
  const from = new Int32Array(n).fill(-1);
  const open = new Uint8Array(n);
  open[first] = 1;
  let promise = tail[first]!;
  let leftOut = -Infinity;
  for (let opened = 0; opened < mostStarts; opened += 1) {
    const start = mostPromising(worth, tail, open, first);
    promise = start < 0 ? worth[n - 1]! : worth[start]! + tail[start]!;
    const enough = Math.max(target, worth[n - 1]!) + slack;
    if (start < 0 || promise <= enough) break;
    open[start] = 0;
    pricing.meter.spent += n / 32;
    const before = worth[start]!;
    const least = isClose ? worth[n - 1]! + slack : enough;
    leftOut = Math.max(leftOut, before + limitToPromising(pricing, clear, start, least - before));
    fillRows(pricing, start);
    stackStrips(pricing, start, 0);
    eachSection(pricing, start, (p, section) => {
      if (before + section <= worth[p]!) return;
      worth[p] = before + section;
      from[p] = start;
      if (p === n - 1) return;
      open[p] = 1;
      // The end of the plate takes the best of all ends before it.
      if (worth[p]! <= worth[n - 1]!) return;
      worth[n - 1] = worth[p]!;
      from[n - 1] = -1 - p;
    });
  }
  return { worth, from, clear, bound: Math.max(worth[n - 1]!, promise, leftOut) };
}
