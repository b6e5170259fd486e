/**
 * One direction of the plate. An interval is what a workpiece may span in that direction; intervals are
 * numbered from small to large, so that whatever is cut from one has a smaller number.
 *
 * On a plate with nothing to avoid only the size matters (`sizeAxis`): the interval is a length from 0.
 * With defects the place matters as well (`placeAxis`): the interval is a pair of places.
 *
 *     interval i  |-----------------------------|        splits of i: entries splitStart[i] .. splitStart[i+1] - 1
 *     split       |-- first[s] --|- second[s] --|        both are intervals; what is left over is waste
 *     waste       |--- shorter by one step ---|..|       narrower[2 i], narrower[2 i + 1]: intervals, or -1
 *
 * Lengths carry one kerf: a piece of length l that stands with others in a row takes l + kerf of a plate that
 * is longer by a kerf, which lets the last kerf run off the end exactly as it may.
 */
export interface Axis {
  readonly count: number;
  /** Ticks, kerf included. Under `bound` the most that an interval of the kind can measure. */
  readonly size: Int32Array;
  /** Place of the near end, ticks from the plate's; all 0 on a size axis. */
  readonly near: Int32Array;
  /** Place of the far end, kerf included; on a size axis the size. */
  readonly far: Int32Array;
  readonly splitStart: Int32Array;
  readonly first: Int32Array;
  readonly second: Int32Array;
  readonly narrower: Int32Array;
  /** The interval that is the plate itself. */
  readonly whole: number;
  /** The intervals that hold a piece of this length most tightly, for each place where it may begin. */
  readonly homes: (length: number) => Int32Array;
}

/** Splits while an axis is being built. */
export interface SplitList {
  readonly start: Int32Array;
  readonly first: number[];
  readonly second: number[];
}

/** An empty list for `count` intervals; the caller fills interval after interval. */
export function splitList(count: number): SplitList {
  return { start: new Int32Array(count + 1), first: [], second: [] };
}
