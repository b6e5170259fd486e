import type { Plate } from '../plate.ts';
import { ceilIndex } from './raster.ts';
import type { Raster } from './raster-plate.ts';
import type { Blocked } from './stack.ts';

/** What is blocked of a strip, and from where to where along it. */
export interface Obstacle extends Blocked {
  readonly x: number;
  readonly end: number;
  /** Its number among all rectangles of the plate. */
  readonly number: number;
}

/** Obstacles in the way along a strip, and which clearances have any (1). */
export interface InTheWay {
  readonly obstacles: readonly Obstacle[];
  readonly blocked: Uint8Array;
}

/** Places where an obstacle begins or ends to lie under a piece, ascending, and their x indices. */
export interface Changes {
  count: number;
  readonly at: number[];
  readonly index: number[];
}

/** Where rectangles of a plate begin and end to lie under pieces, each looked up once. */
export interface Places {
  /** X index from which pieces lie over a rectangle, by length group × rectangles + rectangle; −1: not looked up yet. */
  readonly begins: Int32Array;
  /** X index from which they no longer do, by rectangle; likewise. */
  readonly ends: Int32Array;
  /** The changes asked for last. */
  readonly changes: Changes;
}

/** Nothing looked up yet. */
export function openPlaces({ clearances }: Plate, { groups }: Raster): Places {
  const rectangles = clearances.reduce((sum, list) => sum + list.length, 0);
  return {
    begins: new Int32Array(rectangles * groups.length).fill(-1),
    ends: new Int32Array(rectangles).fill(-1),
    changes: { count: 0, at: [], index: [] },
  };
}

/** The places where an obstacle begins or ends to lie under a piece of this length group. Good until the next call. */
export function changesUnder(
  { begins, ends, changes }: Places,
  { xs, groups }: Raster,
  inReach: readonly Obstacle[],
  index: number,
): Changes {
  const { length } = groups[index]!;
  changes.count = 0;
  for (let i = 0; i < inReach.length; i += 1) {
    const { x, end, number } = inReach[i]!;
    const from = index * ends.length + number;
    if (begins[from] === -1) begins[from] = ceilIndex(xs, x - length + 1);
    if (ends[number] === -1) ends[number] = ceilIndex(xs, end);
    insert(changes, x - length + 1, begins[from]!);
    insert(changes, end, ends[number]!);
  }
  return changes;
}

/** Puts a change in its place among those before it: they are few. */
function insert(changes: Changes, place: number, number: number): void {
  const { at, index } = changes;
  let k = changes.count;
  for (; k > 0 && at[k - 1]! > place; k -= 1) {
    at[k] = at[k - 1]!;
    index[k] = index[k - 1]!;
  }
  at[k] = place;
  index[k] = number;
  changes.count += 1;
}
