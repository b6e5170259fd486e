import type { Plate, Shape } from '../plate.ts';
import type { Axis } from './axis.ts';
import type { Clearances } from './clearance.ts';
import { placeAxis } from './place-axis.ts';
import { commonDivisor, lastNotAfter, normalPoints, rasterPoints, thinned } from './points.ts';
import { sizeAxis } from './size-axis.ts';

/** How large a net may become before points are left out. */
export interface NetLimits {
  /** Elementary steps of one pass. */
  readonly passWork: number;
  readonly states: number;
}

/** A direction of the plate before its points are chosen; ticks, kerf included. */
export interface Direction {
  readonly length: number;
  readonly kerf: number;
  readonly steps: readonly number[];
  readonly starts: readonly number[];
  /** Sizes that must stay apart, as a piece that differs would need a cut that is not to be had. */
  readonly exact: boolean;
  readonly shortest: number;
  /** Whether a piece may have to lie off the normal points, because what it shares a strip with cannot move. */
  readonly shifted: boolean;
}

/** What the plate and the pieces ask of one direction. */
export function direction(
  plate: Plate,
  shapes: readonly Shape[],
  clearances: Clearances,
  of: 'length' | 'width',
): Direction {
  const kerf = of === 'length' ? plate.crosscutKerf : plate.ripKerf;
  const length = plate[of] + kerf;
  const sizes = [...new Set(shapes.map((shape) => shape[of] + kerf))];
  const shortest = Math.min(...sizes);
  const ripFrom = plate.shortestRip + plate.crosscutKerf;
  const shortLength = Math.min(...shapes.map((shape) => shape.length)) + plate.crosscutKerf;
  // A workpiece that is ripped may have to be longer than what it holds.
  const padded = of === 'length' && ripFrom > shortest && ripFrom <= length;
  const exact = plate.stages !== 'any' || (of === 'width' && ripFrom > shortLength);
  const ends = clearances.ofKind
    .flat()
    .flatMap((clearance) =>
      clearances.blocks[clearance]!.map((block) =>
        of === 'length' ? block.x + block.length : block.y + block.width,
      ),
    );
  const starts = [0, ...ends.filter((end) => end > 0 && end + shortest <= length)];
  return {
    length,
    kerf,
    steps: padded ? [...sizes, ripFrom] : sizes,
    starts: [...new Set(starts)],
    exact,
    shortest,
    shifted: of === 'width' && ripFrom > shortLength && isPlaced(clearances),
  };
}

/** Whether something on the plate must be avoided, so that places matter. */
export function isPlaced(clearances: Clearances): boolean {
  return clearances.ofKind.some((list) => list.length > 0);
}

interface Points {
  readonly kept: Int32Array;
  readonly normal: Int32Array;
  readonly complete: boolean;
}

/** Points for both directions, and how to make an axis of them. */
export interface ChosenPoints {
  readonly along: Points;
  readonly across: Points;
  /** Whether no point that could matter is missing. */
  readonly complete: boolean;
  readonly axis: (of: Direction, points: Points, side: 'pattern' | 'bound') => Axis;
}

/** All points that are needed, or as many as the limits allow. */
export function choosePoints(
  along: Direction,
  across: Direction,
  placed: boolean,
  stages: Plate['stages'],
  limits: NetLimits,
): ChosenPoints {
  const levels = stages === 'any' ? 1 : stages + 1;
  const full = { along: allPoints(along, placed), across: allPoints(across, placed) };
  const axis: ChosenPoints['axis'] = (of, points, side) =>
    placed ? placeAxis(points.kept, of.shortest, side, of.exact) : sizeAxis(points.kept, points.normal, side);
  let most = Math.max(full.along.kept.length, full.across.kept.length);
  for (;;) {
    const thin = (of: Direction, points: Points): Points => ({
      ...points,
      kept: thinned(points.kept, most, { ...of, must: of.starts, widest: of.shortest }),
    });
    const kept = { along: thin(along, full.along), across: thin(across, full.across) };
    const complete =
      full.along.complete &&
      full.across.complete &&
      kept.along.kept.length === full.along.kept.length &&
      kept.across.kept.length === full.across.kept.length;
    const columns = axisSize(kept.along.kept, along, placed);
    const rows = axisSize(kept.across.kept, across, placed);
    const states = levels * columns.intervals * rows.intervals;
    const work = levels * (columns.splits * rows.intervals + rows.splits * columns.intervals) + 3 * states;
    if ((work <= limits.passWork && states <= limits.states) || most <= 8) {
      return { ...kept, complete, axis };
    }
    most = Math.max(8, Math.floor(most * 0.85));
  }
}

/** Few enough places to look at every multiple of the unit. */
const fewPlaces = 60;

/** The points that are needed for an exact answer; where they are too many to list, most of them. */
function allPoints(of: Direction, placed: boolean): Points {
  const normal = normalPoints(of.length, of.steps, of.starts);
  if (placed) {
    const points = of.shifted ? shiftedPoints(of, normal) : { points: normal, complete: true };
    // A cut nearer to the far end than the shortest piece frees nothing but a piece from waste.
    const useful = points.points.filter(
      (point) => point < of.length && (of.exact || point + of.shortest <= of.length),
    );
    const kept = Int32Array.from([...useful, of.length]);
    return { kept, normal: kept, complete: points.complete };
  }
  if (!of.exact) return { normal, kept: rasterPoints(normal, of.length), complete: true };
  const kept = normal.at(-1) === of.length ? normal : Int32Array.from([...normal, of.length]);
  return { kept, normal: kept, complete: true };
}

/**
 * Places off the normal points. A workpiece too short to be ripped has the width of its strip, and the strip cannot be
 * pushed to the near edge further than the longer pieces in it, so that it ends where one of them does: it begins at
 * a normal point less a step. That may go on from strip to strip; all of it lies on multiples of the common divisor.
 */
function shiftedPoints(of: Direction, normal: Int32Array): { points: Int32Array; complete: boolean } {
  const unit = commonDivisor([...of.steps, ...of.starts, of.length]);
  const places = of.length / unit;
  if (places <= fewPlaces) {
    return { points: Int32Array.from({ length: places + 1 }, (_, at) => at * unit), complete: true };
  }
  const starts = new Set<number>([...normal, of.length].flatMap((end) => of.steps.map((step) => end - step)));
  // For the bound: no gap that could hold a piece, and the last place where one may begin.
  for (let fill = of.length - of.shortest; fill > 0; fill -= Math.max(unit, of.shortest - unit))
    starts.add(fill);
  const all = [...of.starts, ...starts].filter((start) => start >= 0);
  return { points: normalPoints(of.length, of.steps, [...new Set(all)]), complete: false };
}

/** Intervals and splits of the axis that these points make. */
function axisSize(points: Int32Array, of: Direction, placed: boolean): { intervals: number; splits: number } {
  let intervals = 0;
  let splits = 0;
  for (let to = 0; to < points.length; to++) {
    if (!placed) {
      intervals += 1;
      splits += lastNotAfter(points, points[to]! / 2);
      continue;
    }
    const lastCut = lastNotAfter(points, Math.max(0, points[to]! - of.shortest));
    for (let from = 0, cut = 0; points[from]! + of.shortest <= points[to]!; from++) {
      while (points[cut]! < points[from]! + of.shortest) cut += 1;
      intervals += 1;
      splits += Math.max(0, lastCut - cut + 1);
    }
  }
  return { intervals, splits };
}
