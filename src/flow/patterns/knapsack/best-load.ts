import type { Meter } from '../meter.ts';
import type { ArcWorth, SuffixTable } from './suffix-table.ts';

/** What one stick holds: kinds ascending (longest first), and how many of each. */
export interface Load {
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
  readonly worth: number;
}

/** Most steps of one search, and of one that has its first kind given; beyond them the best so far stands. */
const mostSteps = 1_000_000;
const mostStepsFrom = 20_000;

/**
 * The best load of a stick by a table with step 1, that begins with kind `first` or a later one: at each kind as many
 * copies as the table says. Ties go to more copies of the longer kind.
 */
export function tracedLoad(
  table: SuffixTable,
  worth: Float64Array,
  caps: Int32Array,
  length: number,
  arcs?: ArcWorth,
  first = -1,
): Load {
  const { lengths, width, values } = table;
  const kinds: number[] = [];
  const counts: number[] = [];
  let left = length;
  let total = 0;
  for (let k = Math.max(0, first); k < lengths.length; k += 1) {
    const extra = arcs?.[k];
    let best = k === first ? -Infinity : values[(k + 1) * width + left]!;
    let count = 0;
    let gain = 0;
    let here = 0;
    for (let n = 1; n <= caps[k]! && n * lengths[k]! <= left; n += 1) {
      here += worth[k]! + (extra === undefined ? 0 : extra[left - (n - 1) * lengths[k]!]!);
      if (here === -Infinity) break;
      const value = here + values[(k + 1) * width + left - n * lengths[k]!]!;
      if (value < best - 1e-12) continue;
      best = value;
      count = n;
      gain = here;
    }
    if (count === 0) continue;
    kinds.push(k);
    counts.push(count);
    total += gain;
    left -= count * lengths[k]!;
  }
  return { kinds, counts, worth: total };
}

/** What a search found, and whether it ended by itself: then nothing is worth more than the load, or than `above`. */
export interface SearchedLoad {
  readonly load: Load | null;
  readonly complete: boolean;
}

/**
 * The best load worth more than `above`, by depth-first search with the table as bound; null when none was
 * found. With `first` given, the best that begins with that kind. For tables of any
 * step; no arcs.
 */
export function searchedLoad(
  table: SuffixTable,
  worth: Float64Array,
  caps: Int32Array,
  length: number,
  above: number,
  meter: Meter,
  first = -1,
): SearchedLoad {
  const { lengths, step, width, values } = table;
  const left = Int32Array.from(caps);
  const taken: number[] = [];
  let best: number[] | null = null;
  let bar = above;
  let steps = 0;
  const most = first < 0 ? mostSteps : mostStepsFrom;
  const visit = (from: number, room: number, value: number): void => {
    if (value > bar) {
      bar = value;
      best = [...taken];
    }
    for (let k = from; k < lengths.length; k += 1) {
      steps += 1;
      if (steps > most || value + values[k * width + Math.floor(room / step)]! <= bar + 1e-9) return;
      if (lengths[k]! > room || left[k]! <= 0 || worth[k]! <= 0) continue;
      taken.push(k);
      left[k] = left[k]! - 1;
      visit(k, room - lengths[k]!, value + worth[k]!);
      left[k] = left[k]! + 1;
      taken.pop();
    }
  };
  if (first < 0) visit(0, length, 0);
  else if (left[first]! > 0 && lengths[first]! <= length) {
    taken.push(first);
    left[first] = left[first]! - 1;
    visit(first, length - lengths[first]!, worth[first]!);
  }
  meter.spent += steps;
  return { load: best === null ? null : loadOf(best, bar), complete: steps <= most };
}

/** Counts a list of kinds, ascending. */
export function loadOf(taken: readonly number[], worth: number): Load {
  const kinds: number[] = [];
  const counts: number[] = [];
  for (const k of taken) {
    if (kinds[kinds.length - 1] === k) counts[counts.length - 1]! += 1;
    else {
      kinds.push(k);
      counts.push(1);
    }
  }
  return { kinds, counts, worth };
}
