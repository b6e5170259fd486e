import type { Axis } from './axis.ts';
import { splitList } from './axis.ts';
import { lastNotAfter } from './points.ts';

/**
 * An axis where only sizes matter. Interval i stands for every workpiece whose size, brought down to what
 * pieces can fill, is `kept[i]`.
 *
 * A cut at p leaves p and what lies beyond it; the two can change places, so p up to the half is enough.
 * - `pattern`: the rest is brought down to the next kept size. What is found can be cut.
 * - `bound`: sizes are brought up instead. A cut whose size comes up to kept[k] may have been any normal
 *   point above kept[k - 1], so the rest is taken for the least of them: nothing that can be cut is missed.
 * Where no point was left out the two are the same.
 * @param kept ascending from 0; a subset of `normal` with its last (for the bound: gaps below the shortest step)
 * @param normal all normal points of the plate
 */
export function sizeAxis(kept: Int32Array, normal: Int32Array, side: 'pattern' | 'bound'): Axis {
  const count = kept.length;
  const splits = splitList(count);
  const narrower = new Int32Array(2 * count).fill(-1);
  for (let i = 0; i < count; i++) {
    splits.start[i] = splits.first.length;
    if (i > 0) narrower[2 * i] = i - 1;
    for (let k = 1; k < i; k++) {
      const cut = side === 'pattern' ? kept[k]! : firstAfter(normal, kept[k - 1]!);
      if (2 * cut > kept[i]!) break;
      const rest = restAfter(kept, normal, kept[i]! - cut, side);
      if (rest <= 0) continue;
      splits.first.push(k);
      splits.second.push(rest);
    }
  }
  splits.start[count] = splits.first.length;
  return {
    count,
    size: kept,
    near: new Int32Array(count),
    far: kept,
    splitStart: splits.start,
    first: Int32Array.from(splits.first),
    second: Int32Array.from(splits.second),
    narrower,
    whole: count - 1,
    homes: (length) => homesOf(kept, length),
  };
}

function restAfter(kept: Int32Array, normal: Int32Array, rest: number, side: 'pattern' | 'bound'): number {
  if (side === 'pattern') return lastNotAfter(kept, rest);
  return firstNotBefore(kept, normal[lastNotAfter(normal, rest)]!);
}

function homesOf(kept: Int32Array, length: number): Int32Array {
  return length > kept.at(-1)! ? new Int32Array(0) : Int32Array.of(firstNotBefore(kept, length));
}

/** The least normal point above `place`; there is one. */
function firstAfter(normal: Int32Array, place: number): number {
  return normal[lastNotAfter(normal, place) + 1]!;
}

function firstNotBefore(kept: Int32Array, place: number): number {
  const below = lastNotAfter(kept, place);
  return kept[below] === place ? below : below + 1;
}
