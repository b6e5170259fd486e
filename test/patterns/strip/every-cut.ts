import type { Rectangle } from '../../../src/base/geometry/rectangle.ts';
import type { Kind, Plate, Shape } from '../../../src/flow/patterns/plate.ts';
import { type Workpiece, deeper, makeAll } from './workpieces.ts';

/**
 * A run as it may lie on a plate: one rectangle, crosscut into its members one after another (all at one depth), the
 * narrower of which are then ripped. The whole rectangle is clear, and nothing lies beside it in its strip.
 */
export interface RunKind {
  /** Its index among the kinds, where it has no shapes. */
  readonly kind: number;
  /** Of the rectangle: the members and their kerfs; the widest member. */
  readonly length: number;
  readonly width: number;
  readonly members: readonly Shape[];
  /** Rectangles to be clear of, a list for each face that it may show. */
  readonly blocked: readonly (readonly Rectangle[])[];
}

function overlaps(a: Rectangle, b: Rectangle): boolean {
  return a.x < b.x + b.length && b.x < a.x + a.length && a.y < b.y + b.width && b.y < a.y + a.width;
}

/** Whether the workpiece is as long as the run, holds it in some clear place, and can be cut into its members. */
function isRun(plate: Plate, run: RunKind, { x, y, length, width, depth }: Workpiece): boolean {
  const most = plate.stages === 'any' ? Infinity : plate.stages;
  const crosscut = deeper(plate, depth, true);
  if (length !== run.length || width < run.width || crosscut > most) return false;
  const toRip = run.members.filter((member) => member.width < width);
  if (toRip.length > 0 && deeper(plate, crosscut, false) > most) return false;
  if (toRip.some((member) => member.length < plate.shortestRip)) return false;
  return run.blocked.some((list) => {
    for (let low = y; low + run.width <= y + width; low += 1) {
      const box = { x, y: low, length, width: run.width };
      if (!list.some((r) => overlaps(r, box))) return true;
    }
    return false;
  });
}

/** Kinds that may lie on exactly this rectangle of the plate. */
function kindsAt(plate: Plate, kinds: readonly Kind[], where: Rectangle): number[] {
  const isClear = (clearance: number): boolean =>
    !(plate.clearances[clearance] ?? []).some((r) => overlaps(r, where));
  return kinds.flatMap((kind, index) =>
    kind.shapes.some((shape) => shape.length === where.length && shape.width === where.width) &&
    kind.clearances.some(isClear)
      ? [index]
      : [],
  );
}

function leastOf(kinds: readonly Kind[], runs: readonly Shape[] = []): { length: number; width: number } {
  const shapes = [...kinds.flatMap((kind) => kind.shapes), ...runs];
  return {
    length: Math.min(...shapes.map(({ length }) => length)),
    width: Math.min(...shapes.map(({ width }) => width)),
  };
}

/** The most that any way to cut the plate is worth, each kind as often as it fits. Cost: a few 10⁵ steps on 8 × 6. */
export function mostWorth(plate: Plate, kinds: readonly Kind[], worth: ArrayLike<number>): number {
  return makeAll<number>(plate, leastOf(kinds), {
    leftover: () => 0,
    nothing: 0,
    piece: (where) => Math.max(0, ...kindsAt(plate, kinds, where).map((kind) => worth[kind] ?? 0)),
    both: (near, far) => near + far,
    better: Math.max,
  });
}

/** Counts of each kind, packed four bits a kind: at most 15 of each of at most 7 kinds. */
type Counts = number;

function countOf(counts: Counts, kind: number): number {
  return (counts >> (4 * kind)) & 15;
}

function covers(a: Counts, b: Counts, kinds: number): boolean {
  for (let kind = 0; kind < kinds; kind += 1) if (countOf(a, kind) < countOf(b, kind)) return false;
  return true;
}

/** One kind more or less is one more or less in its four bits. */
function pieceCounts(
  plate: Plate,
  kinds: readonly Kind[],
  where: Workpiece,
  runs: readonly RunKind[] = [],
): Counts[] {
  const found = runs.filter((run) => isRun(plate, run, where)).map(({ kind }) => kind);
  return [...kindsAt(plate, kinds, where), ...found].flatMap((kind) =>
    (kinds[kind]?.cap ?? 0) > 0 ? [1 << (4 * kind)] : [],
  );
}

/** Both sides' pieces together, no kind above its cap: what is over is left out. */
function together(a: Counts, b: Counts, caps: readonly number[]): Counts {
  let both = 0;
  for (let kind = 0; kind < caps.length; kind += 1) {
    both |= Math.min(caps[kind] ?? 0, countOf(a, kind) + countOf(b, kind)) << (4 * kind);
  }
  return both;
}

/** The sets that no other of the list holds. */
function maximal(all: readonly Counts[], kinds: number): Counts[] {
  let kept: Counts[] = [];
  for (const counts of new Set(all)) {
    if (kept.some((other) => covers(other, counts, kinds))) continue;
    kept = [...kept.filter((other) => !covers(counts, other, kinds)), counts];
  }
  return kept;
}

/**
 * Every maximal set of pieces that can be cut from the plate, as counts of each kind, none above its cap (at most 15).
 * Leaving a piece out of one is always possible too. A run counts as one piece of its kind, which has no shapes.
 */
export function maximalCounts(
  plate: Plate,
  kinds: readonly Kind[],
  runs: readonly RunKind[] = [],
): number[][] {
  const caps = kinds.map((kind) => Math.min(kind.cap, 15));
  const none: readonly Counts[] = [0];
  const found = makeAll<readonly Counts[]>(plate, leastOf(kinds, runs), {
    leftover: () => none,
    nothing: none,
    piece: (where) => pieceCounts(plate, kinds, where, runs),
    both: (near, far) => {
      if (near === none) return far;
      if (far === none) return near;
      return near.flatMap((a) => far.map((b) => together(a, b, caps)));
    },
    better: (a, b) => (a === b || b.length === 0 ? a : maximal([...a, ...b], caps.length)),
  });
  return found.map((counts) => caps.map((_, kind) => countOf(counts, kind)));
}

/**
 * For every set of pieces that can be cut from the plate (counts of each kind, none above its cap): the most area of
 * leftovers at least as long and as wide as `keep` that can be had beside it.
 */
export function keptOffcuts(
  plate: Plate,
  kinds: readonly Kind[],
  keep: { readonly length: number; readonly width: number },
): { readonly counts: readonly number[]; readonly area: number }[] {
  type Areas = ReadonlyMap<Counts, number>;
  const caps = kinds.map((kind) => Math.min(kind.cap, 15));
  const raise = (areas: Map<Counts, number>, counts: Counts, area: number): void => {
    if (area > (areas.get(counts) ?? -1)) areas.set(counts, area);
  };
  const nothing: Areas = new Map([[0, 0]]);
  const found = makeAll<Areas>(plate, leastOf(kinds), {
    leftover: (length, width) =>
      length >= keep.length && width >= keep.width ? new Map([[0, length * width]]) : nothing,
    nothing,
    piece: (where) => new Map(pieceCounts(plate, kinds, where).map((counts) => [counts, 0])),
    both: (near, far) => {
      if (near === nothing) return far;
      if (far === nothing) return near;
      const areas = new Map<Counts, number>();
      for (const [a, kept] of near)
        for (const [b, more] of far) raise(areas, together(a, b, caps), kept + more);
      return areas;
    },
    better: (a, b) => {
      const areas = new Map(a);
      for (const [counts, area] of b) raise(areas, counts, area);
      return areas;
    },
  });
  return [...found].map(([counts, area]) => ({ counts: caps.map((_, kind) => countOf(counts, kind)), area }));
}
