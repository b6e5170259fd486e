import { type Pricing, fillRow, fillRows, firstRippable, sectionWorth, stackStrips } from './frame.ts';

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
 * Most worth of what lies behind each position if nothing there were blocked: the bound that prunes starts.
 * Rows and strips of the clear plate give the worth S(l) of one clear section of length l from the butt end; then
 *   tail(p) = max over later positions q of S(x_q − x_p) + tail(q),
 * with lengths rounded up to the next listed one, so that no tail is too small. On a relaxed raster a position stands for all
 * up to the next, so a section may be longer by that. O(positions²).
 */
function clearTail(pricing: Pricing): Float64Array {
  const { raster, memory, bands } = pricing;
  const { xs } = raster;
  const n = xs.length;
  memory.alias.forEach((_, b) => {
    memory.alias[b] = bands.bands[b]!.clearBand;
    if (memory.alias[b] === b) fillRow(pricing, b, 0, memory.rows[b]!);
  });
  stackStrips(pricing, 0, 0);
  const from = firstRippable(pricing, 0);
  const single = Float64Array.from(xs, (_, p) => sectionWorth(pricing, from, p));
  const reach = raster.relaxed && !raster.exactX ? 1 : 0;
  const tail = new Float64Array(n);
  pricing.meter.spent += (n * n) / 16;
  for (let p = n - 2; p >= 0; p -= 1) {
    let best = tail[p + 1]!;
    let last = 0;
    let length = 0;
    for (let q = p + 1; q < n; q += 1) {
      const span = xs[q + reach] === undefined ? xs[n - 1]! - xs[p]! : xs[q + reach]! - xs[p]!;
      while (xs[length]! < span) length += 1;
      // Only where the worth of one section rises can it pay to end it: what lies behind only shrinks.
      if (single[length]! <= last) continue;
      last = single[length]!;
      if (last + tail[q]! > best) best = last + tail[q]!;
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
 */
export function cutSections(pricing: Pricing, first: number, target: number, mostStarts: number): Sections {
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
    if (start < 0 || promise <= Math.max(target, worth[n - 1]!)) break;
    open[start] = 0;
    pricing.meter.spent += n;
    fillRows(pricing, start);
    stackStrips(pricing, start, 0);
    const rippable = firstRippable(pricing, start);
    const before = worth[start]!;
    let last = 0;
    for (let p = start + 1; p < n; p += 1) {
      const section = sectionWorth(pricing, rippable, p);
      if (section <= last) continue;
      last = section;
      if (before + section <= worth[p]!) continue;
      worth[p] = before + section;
      from[p] = start;
      if (p < n - 1) open[p] = 1;
    }
    // The end of the plate takes the best of all ends before it.
    for (let p = start + 1; p < n - 1; p += 1) {
      if (worth[p]! > worth[n - 1]!) {
        worth[n - 1] = worth[p]!;
        from[n - 1] = -1 - p;
      }
    }
  }
  return { worth, from, bound: Math.max(worth[n - 1]!, promise) };
}
