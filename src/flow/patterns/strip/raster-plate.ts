import type { Kind, Plate } from '../plate.ts';
import { evenPositions, reachablePositions, thin } from './raster.ts';

/** Pieces of one length, whichever kinds they are of. */
export interface LengthGroup {
  readonly length: number;
  readonly shapes: readonly {
    readonly kind: number;
    readonly width: number;
    readonly clearances: readonly number[];
    readonly shortestOfRun: number | null;
  }[];
}

/**
 * The candidate positions of a plate. Both axes are "start space": the plate grown by one kerf, every piece
 * grown by one kerf, so that n pieces take n lengths and n kerfs and the last kerf may run off the end.
 */
export interface Raster {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  /** Longest first. */
  readonly groups: readonly LengthGroup[];
  /** By length group × positions + position: index of the position behind a piece that starts there, its kerf included; −1 when it does not fit. */
  readonly next: Int16Array;
  /** Distinct widths of the kinds that fit, ascending. */
  readonly widths: readonly number[];
  /** For each width: index of the y position behind a strip that starts at each y; −1 when it does not fit. */
  readonly nextY: readonly Int16Array[];
  /** Whether no position along (across) was left out or rounded: both exact, the best pattern on the raster is the best there is. */
  readonly exactX: boolean;
  readonly exactY: boolean;
  /** Whether positions were rounded down (a relaxation, for bounds) rather than up (for patterns). */
  readonly relaxed: boolean;
}

/** Positions by which an end may lie farther than listed: on a relaxed raster one stands for all up to the next. */
export function reachOf({ relaxed, exactX }: Raster): 0 | 1 {
  return relaxed && !exactX ? 1 : 0;
}

export interface RasterSize {
  readonly mostX: number;
  readonly mostY: number;
  readonly relaxed: boolean;
  /** Lists no longer than this are left whole: then nothing is lost by rounding. */
  readonly wholeX?: number;
  readonly wholeY?: number;
}

/** The shapes that fit the plate at all, one entry per kind and shape. */
function fitting(plate: Plate, kinds: readonly Kind[]): { kind: number; length: number; width: number }[] {
  return kinds.flatMap((kind, index) =>
    kind.clearances.length === 0 || kind.cap <= 0
      ? []
      : kind.shapes
          .filter((s) => s.length <= plate.length && s.width <= plate.width)
          .map((s) => ({ kind: index, length: s.length, width: s.width })),
  );
}

/** Where a piece may lie pushed against something: the far edges of the blocked rectangles. */
function edges(plate: Plate, axis: 'x' | 'y'): number[] {
  return plate.clearances.flatMap((rectangles) =>
    rectangles.map((r) => (axis === 'x' ? r.x + r.length : r.y + r.width)),
  );
}

interface Positions {
  readonly list: number[];
  readonly exact: boolean;
  /** Beyond this nothing can start any more: all such positions count as the end. */
  readonly lastStart: number;
}

function positions(
  limit: number,
  origins: readonly number[],
  extra: readonly number[],
  steps: readonly { size: number; cap: number }[],
  { most, whole }: { readonly most: number; readonly whole: number },
): Positions {
  const inside = [...new Set([0, ...origins.filter((o) => o > 0 && o < limit)])];
  const least = Math.min(...steps.map((s) => s.size));
  const lastStart = limit - least;
  const all = reachablePositions(limit, inside, steps);
  if (all === null) return { list: evenPositions(limit, inside, most, least), exact: false, lastStart };
  const set = new Set(
    [...all, ...extra.filter((e) => e > 0)].filter((at) => at <= lastStart || at === limit),
  );
  const useful = [...set].sort((a, b) => a - b);
  const list = useful.length <= whole ? useful : thin(useful, most, new Set(inside), least);
  return { list, exact: list.length === useful.length, lastStart };
}

/** Greatest index of a position: lists of indices are long, and many boards have many. */
const mostIndex = 32_767;

function nextIndices(xs: Float64Array, step: number, lastStart: number, relaxed: boolean): Int16Array {
  const end = xs.length - 1;
  if (end > mostIndex) throw new RangeError(`${end} positions are more than ${mostIndex}`);
  const next = new Int16Array(xs.length).fill(-1);
  let at = 0;
  for (let p = 0; p <= end && xs[p]! + step <= xs[end]!; p += 1) {
    const behind = xs[p]! + step;
    while (xs[at]! < behind) at += 1;
    // No gap is wider than the smallest step, so that rounding down still leads on.
    next[p] = behind > lastStart ? end : relaxed && xs[at]! > behind ? at - 1 : at;
  }
  return next;
}

/** Builds the raster; null when no kind fits the plate. */
export function rasterOf(plate: Plate, kinds: readonly Kind[], size: RasterSize): Raster | null {
  const shapes = fitting(plate, kinds);
  if (shapes.length === 0) return null;
  const limitX = plate.length + plate.crosscutKerf;
  const limitY = plate.width + plate.ripKerf;
  const stepsX = shapes.map(({ kind, length }) => {
    const step = length + plate.crosscutKerf;
    return { size: step, cap: Math.min(kinds[kind]!.cap, Math.floor(limitX / step)) };
  });
  const widths = [...new Set(shapes.map((s) => s.width))].sort((a, b) => a - b);
  // A strip of a width can lie beside others of the same width that hold other kinds: no cap across the board.
  const stepsY = widths.map((w) => ({
    size: w + plate.ripKerf,
    cap: Math.floor(limitY / (w + plate.ripKerf)),
  }));
  const edgesY = edges(plate, 'y');
  const x = positions(limitX, edges(plate, 'x'), [], stepsX, { most: size.mostX, whole: size.wholeX ?? 0 });
  const y = positions(limitY, edgesY, raisedStrips(edgesY, widths), stepsY, {
    most: size.mostY,
    whole: size.wholeY ?? 0,
  });
  const xs = Float64Array.from(x.list);
  const ys = Float64Array.from(y.list);
  const lengths = [...new Set(shapes.map((s) => s.length))].sort((a, b) => b - a);
  const groups = lengths.map((length) => ({
    length,
    shapes: shapes
      .filter((s) => s.length === length)
      .map(({ kind, width }) => {
        const { clearances, run } = kinds[kind]!;
        return { kind, width, clearances, shortestOfRun: run?.shortest ?? null };
      }),
  }));
  const next = new Int16Array(groups.length * xs.length);
  // Where no position was left out there is nothing to round down to: what is not listed is of no use.
  const rounds = size.relaxed && !x.exact;
  groups.forEach(({ length }, i) =>
    next.set(nextIndices(xs, length + plate.crosscutKerf, x.lastStart, rounds), i * xs.length),
  );
  const nextY = widths.map((w) => nextIndices(ys, w + plate.ripKerf, y.lastStart, size.relaxed && !y.exact));
  return { xs, ys, groups, next, widths, nextY, exactX: x.exact, exactY: y.exact, relaxed: size.relaxed };
}

/** A strip may start below a defect's far edge when a narrower piece in it rests on that edge and ends at the strip's top. */
function raisedStrips(edgesY: readonly number[], widths: readonly number[]): number[] {
  return edgesY.flatMap((edge) =>
    widths.flatMap((wide) => widths.filter((narrow) => narrow < wide).map((narrow) => edge + narrow - wide)),
  );
}
