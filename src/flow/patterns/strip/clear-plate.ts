import type { Pricing } from './frame.ts';
import { stackStrips } from './heights.ts';
import { ceilIndex } from './raster.ts';
import { reachOf } from './raster-plate.ts';
import { fillClearRows } from './rows.ts';
import { eachSection } from './section-steps.ts';

/** Worths of a section with nothing in the way: one longer than over[k] may be worth gain[k]. Both rise with k. */
export interface Promises {
  readonly over: readonly number[];
  readonly gain: readonly number[];
}

/** What a strip of one width and the best strips beside it promise. */
export interface StripPromises extends Promises {
  /** The band of that width with nothing in the way. */
  readonly band: number;
}

/** What a plate promises if nothing on it were blocked. */
export interface ClearPlate {
  /** Most worth of what lies behind each position. */
  readonly tail: Float64Array;
  /** One for each width of strips. */
  readonly strips: readonly StripPromises[];
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
 * Most worth of what lies behind each position: with S(l) the worth of one clear section of length l,
 *   tail(p) = max over later positions q of S(x_q − x_p) + tail(q).
 * On a relaxed raster a position stands for all up to the next, so a section may be longer by that.
 * O(positions × steps).
 */
function tailOf({ raster, meter }: Pricing, { over, gain }: Promises): Float64Array {
  const { xs } = raster;
  const n = xs.length;
  const reach = reachOf(raster);
  const tail = new Float64Array(n);
  // For each step of S the nearest end that is far enough; it only moves down with p.
  const nearest = new Int32Array(over.length).fill(n - 1);
  meter.spent += (n * over.length) / 8;
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

/**
 * The best row of a clear band with the best strips beside it: these take what the plate's width leaves, and are worth no
 * more than the clear plate's stack of that height.
 */
function promisesOf(pricing: Pricing, band: number): StripPromises {
  const { memory, bands, raster, plate } = pricing;
  const { rows, rowFrom, rowTo, heights, heightFrom, heightTo } = memory;
  const { ys } = raster;
  const left = ys.at(-1)! - bands.lists.width[band]! - plate.ripKerf;
  const beside = Math.min(ys.length - 1, ceilIndex(ys, left));
  const over: number[] = [];
  const gain: number[] = [];
  let r = rowFrom[band]!;
  let h = heightFrom[beside]!;
  let row = 0;
  let others = 0;
  while (r < rowTo[band]! || h < heightTo[beside]!) {
    const rowAt = r < rowTo[band]! ? rows.at[r]! : Infinity;
    const otherAt = h < heightTo[beside]! ? heights.at[h]! : Infinity;
    if (rowAt <= otherAt) row = rows.value[r++]!;
    if (otherAt <= rowAt) others = heights.value[h++]!;
    if (row === 0) continue;
    over.push(countsFrom(pricing, Math.min(rowAt, otherAt)));
    gain.push(row + others);
  }
  pricing.meter.spent += 2 * over.length;
  return { band, over, gain };
}

/** Fills rows and strips of the clear plate, and says what they promise. */
export function clearPlate(pricing: Pricing): ClearPlate {
  const { clearBand } = pricing.bands.lists;
  fillClearRows(pricing);
  stackStrips(pricing, 0, 0);
  const over: number[] = [];
  const gain: number[] = [];
  eachSection(pricing, 0, (end, worth) => {
    over.push(countsFrom(pricing, end));
    gain.push(worth);
  });
  const strips: StripPromises[] = [];
  clearBand.forEach((clear, b) => {
    if (clear === b) strips.push(promisesOf(pricing, b));
  });
  return { tail: tailOf(pricing, { over, gain }), strips };
}
