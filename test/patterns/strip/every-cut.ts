import type { Kind, Plate } from '../../../src/flow/patterns/plate.ts';

/**
 * Independent answers for one tiny plate, by trying every cut at every whole position: nothing here knows of rasters,
 * strips or sections. A workpiece is a leftover, a piece, or is cut in two edge to edge; the kerf may run off either
 * end of it. Depths count as the rules do: crosscuts stand at odd depths, rips at even ones, and a cut of the kind that
 * made the workpiece nests no deeper. All sizes must be small whole numbers.
 */
interface Recursion<T> {
  /** What a workpiece that is cut no further is as a leftover. */
  readonly leftover: (length: number, width: number) => T;
  /** What a side is that the kerf eats up. */
  readonly nothing: T;
  /** What a workpiece of exactly this outline is as a piece. */
  readonly piece: (x: number, y: number, length: number, width: number) => T;
  readonly both: (near: T, far: T) => T;
  readonly better: (a: T, b: T) => T;
}

/** The depth after one more cut; `any` nesting is counted as depth 0 throughout. */
function deeper(plate: Plate, depth: number, isCrosscut: boolean): number {
  if (plate.stages === 'any') return 0;
  if (isCrosscut) return depth % 2 === 1 ? depth : depth + 1;
  return depth > 0 && depth % 2 === 0 ? depth : depth + (depth === 0 ? 2 : 1);
}

function recurse<T>(plate: Plate, least: { length: number; width: number }, how: Recursion<T>): T {
  const known = new Map<number, T>();
  const most = plate.stages === 'any' ? 0 : plate.stages;

  function solve(x: number, y: number, length: number, width: number, depth: number): T {
    if (length < least.length || width < least.width) return how.leftover(length, width);
    const key = (((depth * 64 + x) * 64 + y) * 64 + length) * 64 + width;
    const before = known.get(key);
    if (before !== undefined) return before;
    let best = how.better(how.leftover(length, width), how.piece(x, y, length, width));
    const across = deeper(plate, depth, true);
    if (across <= most) {
      const kerf = plate.crosscutKerf;
      for (let at = 1 - kerf; at < length; at += 1) {
        if (kerf === 0 && at <= 0) continue;
        const far = length - at - kerf;
        const first = at > 0 ? solve(x, y, at, width, across) : how.nothing;
        const second = far > 0 ? solve(x + at + kerf, y, far, width, across) : how.nothing;
        best = how.better(best, how.both(first, second));
      }
    }
    const along = deeper(plate, depth, false);
    if (along <= most && length >= plate.shortestRip) {
      const kerf = plate.ripKerf;
      for (let at = 1 - kerf; at < width; at += 1) {
        if (kerf === 0 && at <= 0) continue;
        const far = width - at - kerf;
        const first = at > 0 ? solve(x, y, length, at, along) : how.nothing;
        const second = far > 0 ? solve(x, y + at + kerf, length, far, along) : how.nothing;
        best = how.better(best, how.both(first, second));
      }
    }
    known.set(key, best);
    return best;
  }

  return solve(0, 0, plate.length, plate.width, 0);
}

/** Kinds that may lie on exactly this rectangle of the plate. */
function kindsAt(
  plate: Plate,
  kinds: readonly Kind[],
  x: number,
  y: number,
  length: number,
  width: number,
): number[] {
  const isClear = (clearance: number): boolean =>
    (plate.clearances[clearance] ?? []).every(
      (r) => r.x >= x + length || r.x + r.length <= x || r.y >= y + width || r.y + r.width <= y,
    );
  return kinds.flatMap((kind, index) =>
    kind.shapes.some((shape) => shape.length === length && shape.width === width) &&
    kind.clearances.some(isClear)
      ? [index]
      : [],
  );
}

function leastOf(kinds: readonly Kind[]): { length: number; width: number } {
  const shapes = kinds.flatMap((kind) => kind.shapes);
  return {
    length: Math.min(...shapes.map(({ length }) => length)),
    width: Math.min(...shapes.map(({ width }) => width)),
  };
}

/** The most that any way to cut the plate is worth, each kind as often as it fits. Cost: a few 10⁵ steps on 8 × 6. */
export function mostWorth(plate: Plate, kinds: readonly Kind[], worth: ArrayLike<number>): number {
  return recurse<number>(plate, leastOf(kinds), {
    leftover: () => 0,
    nothing: 0,
    piece: (x, y, length, width) =>
      Math.max(0, ...kindsAt(plate, kinds, x, y, length, width).map((kind) => worth[kind] ?? 0)),
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
  where: readonly [x: number, y: number, length: number, width: number],
): Counts[] {
  return kindsAt(plate, kinds, ...where).flatMap((kind) =>
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
 * Leaving a piece out of one is always possible too.
 */
export function maximalCounts(plate: Plate, kinds: readonly Kind[]): number[][] {
  const caps = kinds.map((kind) => Math.min(kind.cap, 15));
  const none: readonly Counts[] = [0];
  const found = recurse<readonly Counts[]>(plate, leastOf(kinds), {
    leftover: () => none,
    nothing: none,
    piece: (...where) => pieceCounts(plate, kinds, where),
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
  const found = recurse<Areas>(plate, leastOf(kinds), {
    leftover: (length, width) =>
      length >= keep.length && width >= keep.width ? new Map([[0, length * width]]) : nothing,
    nothing,
    piece: (...where) => new Map(pieceCounts(plate, kinds, where).map((counts) => [counts, 0])),
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
