import type { ClearPlate } from '../clear-plate.ts';
import { firstRippable } from '../frame.ts';
import { limitToPromising } from '../row-limits.ts';
import { type CountedPricing } from './counted-frame.ts';
import { stackCountedStrips } from './counted-heights.ts';
import { fillCountedRows } from './counted-rows.ts';

/** A section as chosen: what it uses, and where it lies. */
export interface CountedSection {
  readonly start: number;
  readonly end: number;
  readonly use: number;
  readonly worth: number;
}

/** The best whole pattern found, butt end first, and an upper bound on the worth of any that keeps the counts. */
export interface CountedSections {
  readonly worth: number;
  readonly sections: readonly CountedSection[];
  readonly bound: number;
}

/** Calls back for each step of what one section holds, use by use; see eachSection. */
function eachSection(
  { pricing, counting, memory }: CountedPricing,
  start: number,
  take: (end: number, use: number, worth: number) => void,
): void {
  const { rows, heights, rowFrom, rowTo, heightFrom, heightTo } = memory;
  const { uses } = counting;
  const rippable = firstRippable(pricing, start);
  const { fullBand } = pricing.bands;
  const top = pricing.raster.ys.length - 1;
  for (let use = 0; use < uses; use += 1) {
    if (fullBand >= 0) {
      const row = pricing.memory.alias[fullBand]! * uses + use;
      for (let k = rowFrom[row]!; k < rowTo[row]! && rows.at[k]! < rippable; k += 1) {
        take(rows.at[k]!, use, rows.value[k]!);
      }
    }
    const stack = top * uses + use;
    for (let k = heightFrom[stack]!; k < heightTo[stack]!; k += 1)
      take(heights.at[k]!, use, heights.value[k]!);
  }
}

/** Labels of the search over sections, by use × positions + position. */
interface Labels {
  /** Most worth of whole sections that end there with that use; −1: none. */
  readonly worth: Float64Array;
  readonly before: Int32Array;
  readonly lastUse: Int32Array;
  readonly isOpen: Uint8Array;
}

/** The start from which some open label promises most; −1 when none promises anything. */
function mostPromising({ worth, isOpen }: Labels, tail: Float64Array): { start: number; promise: number } {
  const n = tail.length;
  let start = -1;
  let promise = 0;
  for (let label = 0; label < worth.length; label += 1) {
    if (isOpen[label] === 0) continue;
    const p = label % n;
    const here = worth[label]! + tail[p]!;
    if (here <= promise) continue;
    promise = here;
    start = p;
  }
  return { start, promise };
}

/**
 * As cutSections over the whole plate, no kind used more often than counted: labels carry a use, the rows and strips
 * of a start serve the labels of all uses there.
 * @param clear what uncounted clear sections promise, and so a bound on counted ones
 */
export function cutCountedSections(
  counted: CountedPricing,
  clear: ClearPlate,
  target: number,
  slack: number,
  isClose: boolean,
): CountedSections {
  const { uses, sum } = counted.counting;
  const { tail } = clear;
  const n = tail.length;
  const labels: Labels = {
    worth: new Float64Array(uses * n).fill(-1),
    before: new Int32Array(uses * n).fill(-1),
    lastUse: new Int32Array(uses * n),
    isOpen: new Uint8Array(uses * n),
  };
  labels.worth[0] = 0;
  labels.isOpen[0] = 1;
  let best = 0;
  let leftOut = -Infinity;
  let next = mostPromising(labels, tail);
  for (; ; next = mostPromising(labels, tail)) {
    const { start, promise } = next;
    const enough = Math.max(target, labels.worth[best]!) + slack;
    if (start < 0 || promise <= enough) break;
    const before = promise - tail[start]!;
    const least = isClose ? labels.worth[best]! + slack : enough;
    const here: number[] = [];
    for (let use = 0; use < uses; use += 1) {
      const label = use * n + start;
      if (labels.isOpen[label] === 1) here.push(use);
      labels.isOpen[label] = 0;
    }
    counted.pricing.meter.spent += (n * uses) / 32;
    leftOut = Math.max(leftOut, before + limitToPromising(counted.pricing, clear, start, least - before));
    fillCountedRows(counted, start);
    stackCountedStrips(counted, start);
    eachSection(counted, start, (end, more, worth) => {
      for (const use of here) {
        const all = sum[use * uses + more]!;
        const total = labels.worth[use * n + start]! + worth;
        const label = all * n + end;
        if (all < 0 || total <= labels.worth[label]!) continue;
        labels.worth[label] = total;
        labels.before[label] = use * n + start;
        labels.lastUse[label] = more;
        labels.isOpen[label] = end < n - 1 ? 1 : 0;
        if (total > labels.worth[best]!) best = label;
      }
    });
  }
  const sections: CountedSection[] = [];
  for (let label = best; label > 0; label = labels.before[label]!) {
    const before = labels.before[label]!;
    const worth = labels.worth[label]! - labels.worth[before]!;
    sections.unshift({ start: before % n, end: label % n, use: labels.lastUse[label]!, worth });
  }
  return {
    worth: labels.worth[best]!,
    sections,
    bound: Math.max(labels.worth[best]!, next.promise, leftOut),
  };
}
