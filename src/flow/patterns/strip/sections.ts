import { type Pricing, firstRippable } from './frame.ts';
import { stackStrips } from './heights.ts';
import { fillClearRows, fillRows } from './rows.ts';

/** The best ways to cut the plate into sections, as far as the DP went. */
export interface Sections {
  /** worth[p] = most worth of whole sections that end by position p. */
  readonly worth: Float64Array;
  /** Start of the last section of that best; −1 for none; −1 − p where the best is that of the earlier position p. */
  readonly from: Int32Array;
  /** An upper bound on the worth of any pattern: the value found, or what the starts left unopened still promise. */
  readonly bound: number;
}

/**
 * Calls back for each step of what one section holds, once rows and strips are filled from its start: at each position
 * where a section that ends there holds more than every shorter one. Too short to be ripped it holds a row as wide as the plate.
 */
function eachSection(pricing: Pricing, start: number, take: (end: number, worth: number) => void): void {
  const { memory, bands } = pricing;
  const { rows, heights } = memory;
  const rippable = firstRippable(pricing, start);
  let last = 0;
  if (bands.fullBand >= 0) {
    const row = memory.alias[bands.fullBand]!;
    for (let k = memory.rowFrom[row]!; k < memory.rowTo[row]! && rows.at[k]! < rippable; k += 1) {
      last = rows.value[k]!;
      take(rows.at[k]!, last);
    }
  }
  const top = memory.heightFrom.length - 1;
  for (let k = memory.heightFrom[top]!; k < memory.heightTo[top]!; k += 1) {
    if (heights.value[k]! <= last) continue;
    last = heights.value[k]!;
    take(heights.at[k]!, last);
  }
}

/**
 * From just over which length on a step of one clear section's worth counts, anywhere on the plate. What pieces of such a section
 * take, within the caps, is listed as a length unless nothing could start behind it: then it is listed as the end. A
 * section just long enough to be ripped is listed as the next length.
 */
function countsFrom({ raster, plate }: Pricing, end: number): number {
  const { xs, groups } = raster;
  const last = xs.length - 1;
  // The shortest length is the last.
  const before = end === last ? xs[last]! - groups.at(-1)!.length - plate.crosscutKerf : xs[end]! - 1;
  const rip = plate.crosscutKerf + plate.shortestRip;
  return end > 0 && xs[end - 1]! < rip ? Math.min(before, rip - 1) : before;
}

/**
 * Most worth of what lies behind each position if nothing there were blocked: the bound that prunes starts.
 * Rows and strips of the clear plate give the worth S(l) of one clear section of length l from the butt end; then
 *   tail(p) = max over later positions q of S(x_q − x_p) + tail(q).
 * On a relaxed raster a position stands for all up to the next, so a section may be longer by that.
 * O(positions × steps).
 */
export function clearTail(pricing: Pricing): Float64Array {
  const { xs, relaxed, exactX } = pricing.raster;
  const n = xs.length;
  fillClearRows(pricing);
  stackStrips(pricing, 0, 0);
  const over: number[] = [];
  const gain: number[] = [];
  eachSection(pricing, 0, (end, worth) => {
    over.push(countsFrom(pricing, end));
    gain.push(worth);
  });
  const reach = relaxed && !exactX ? 1 : 0;
  const tail = new Float64Array(n);
  // For each step of S the nearest end that is far enough; it only moves down with p.
  const nearest = new Int32Array(over.length).fill(n - 1);
  pricing.meter.spent += (n * over.length) / 8;
  for (let p = n - 2; p >= 0; p -= 1) {
    let best = tail[p + 1]!;
    for (let k = 0; k < over.length; k += 1) {
      const least = xs[p]! + over[k]!;
      if (xs[n - 1]! <= least) continue;
      let q = nearest[k]!;
      while (q > p + 1 && xs[Math.min(n - 1, q - 1 + reach)]! > least) q -= 1;
      nearest[k] = q;
      const total = gain[k]! + tail[q]!;
      if (total > best) best = total;
    }
    tail[p] = best;
  }
  return tail;
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
 * A start is considered only where the worth before it rises: an earlier one with the same worth has more room.
 * With caps the rows are good rather than best, so `bound` then holds for no pattern but the one found.
 * @param slack by how much what is found may fall short of the bound
 */
export function cutSections(
  pricing: Pricing,
  first: number,
  target: number,
  mostStarts: number,
  slack = 0,
): Sections {
  const n = pricing.raster.xs.length;
  const tail = clearTail(pricing);
  const worth = new Float64Array(n);
  const from = new Int32Array(n).fill(-1);
  const open = new Uint8Array(n);
  open[first] = 1;
  let promise = tail[first]!;
  for (let opened = 0; opened < mostStarts; opened += 1) {
    const start = mostPromising(worth, tail, open, first);
    promise = start < 0 ? worth[n - 1]! : worth[start]! + tail[start]!;
    if (start < 0 || promise <= Math.max(target, worth[n - 1]!) + slack) break;
    open[start] = 0;
    pricing.meter.spent += n / 32;
    fillRows(pricing, start);
    stackStrips(pricing, start, 0);
    const before = worth[start]!;
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
  return { worth, from, bound: Math.max(worth[n - 1]!, promise) };
}
