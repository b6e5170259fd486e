import type { Axis } from './axis.ts';
import { splitList } from './axis.ts';
import { lastNotAfter } from './points.ts';

/**
 * An axis where places matter. Intervals are the pairs of kept places; a cut at a kept place between them
 * gives two. Pairs closer than the shortest piece are left out, as nothing fits.
 * - `pattern`: a piece that begins at a kept place ends at the next kept place, or waste is left up to it.
 * - `bound`: every place is brought down to the last kept one, so that a piece may seem to have up to a gap
 *   more room than it has; but an end beyond the last place where a piece may begin counts as the far end, as
 *   what lies between is waste. Gaps must be below the shortest step, so that no piece vanishes in one.
 * Where no point was left out the two are the same.
 * @param kept ascending, first 0, last the far end of the plate; before it the last place where a piece may begin
 * @param shortest the shortest piece, ticks, > 0
 * @param exact whether no cut may be left to free a piece of waste beside it; only the bound minds
 */
export function placeAxis(
  kept: Int32Array,
  shortest: number,
  side: 'pattern' | 'bound',
  exact: boolean,
): Axis {
  const places = kept.length;
  const pairs = pairsBySize(kept, side === 'pattern' ? shortest : 1);
  const count = pairs.length;
  const numberOf = new Int32Array(places * places).fill(-1);
  const size = new Int32Array(count);
  const near = new Int32Array(count);
  const far = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    const from = Math.floor(pairs[i]! / places);
    const to = pairs[i]! % places;
    numberOf[pairs[i]!] = i;
    near[i] = kept[from]!;
    far[i] = kept[to]!;
    const reach = side === 'pattern' || to === places - 1 ? kept[to]! : kept[to + 1]! - 1;
    size[i] = reach - kept[from]!;
  }
  const splits = splitList(count);
  const narrower = new Int32Array(2 * count).fill(-1);
  for (let i = 0; i < count; i++) {
    splits.start[i] = splits.first.length;
    const from = Math.floor(pairs[i]! / places);
    const to = pairs[i]! % places;
    if (from + 1 < to) narrower[2 * i] = numberOf[(from + 1) * places + to]!;
    if (from < to - 1) narrower[2 * i + 1] = numberOf[from * places + to - 1]!;
    for (let cut = from + 1; cut < to; cut++) {
      const first = numberOf[from * places + cut]!;
      const second = numberOf[cut * places + to]!;
      if (first < 0 || second < 0) continue;
      splits.first.push(first);
      splits.second.push(second);
    }
  }
  splits.start[count] = splits.first.length;
  return {
    count,
    size,
    near,
    far,
    splitStart: splits.start,
    first: Int32Array.from(splits.first),
    second: Int32Array.from(splits.second),
    narrower,
    whole: numberOf[places - 1]!,
    homes: (length) => homesOf(kept, numberOf, length, side, exact),
  };
}

/** Pairs from × places + to, ordered by the distance between, then by from. */
function pairsBySize(kept: Int32Array, shortest: number): Int32Array {
  const places = kept.length;
  const pairs: number[] = [];
  for (let from = 0; from < places; from++) {
    for (let to = from + 1; to < places; to++) {
      if (kept[to]! - kept[from]! >= shortest) pairs.push(from * places + to);
    }
  }
  const distance = (pair: number): number => kept[pair % places]! - kept[Math.floor(pair / places)]!;
  return Int32Array.from(pairs.sort((a, b) => distance(a) - distance(b) || a - b));
}

function homesOf(
  kept: Int32Array,
  numberOf: Int32Array,
  length: number,
  side: 'pattern' | 'bound',
  exact: boolean,
): Int32Array {
  const places = kept.length;
  const homes: number[] = [];
  const roundedDown = (end: number): number => {
    return end > kept[places - 2]! ? places - 1 : lastNotAfter(kept, end);
  };
  for (let from = 0; from < places; from++) {
    const end = kept[from]! + length;
    if (end > kept[places - 1]!) break;
    let first = roundedDown(end);
    let last = first;
    if (side === 'pattern') {
      const below = lastNotAfter(kept, end);
      first = kept[below] === end ? below : below + 1;
      last = first;
    } else if (exact) {
      // It may begin anywhere up to the next kept place, and no cut makes the longer interval from the shorter.
      last = roundedDown(kept[from + 1]! - 1 + length);
    }
    for (let to = first; to <= last; to++) {
      const home = numberOf[from * places + to]!;
      if (home >= 0) homes.push(home);
    }
  }
  return Int32Array.from(homes);
}
