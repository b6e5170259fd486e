import type { Rectangle } from '../../../src/base/geometry/rectangle.ts';
import type { Plate } from '../../../src/flow/patterns/plate.ts';

/** A rectangle that cuts have made, and how deep they nest: crosscuts at odd depths, rips at even ones, 0 the plate. */
export interface Workpiece extends Rectangle {
  readonly depth: number;
}

/**
 * What to make of the ways to cut a tiny plate, by trying every cut at every whole position: nothing here knows of
 * rasters, strips or sections. A workpiece is a leftover, a piece, or is cut in two edge to edge; the kerf may run off
 * either end of it. A cut of the kind that made the workpiece nests no deeper. All sizes must be small whole numbers.
 */
export interface Making<T> {
  /** What a workpiece that is cut no further is as a leftover. */
  readonly leftover: (length: number, width: number) => T;
  /** What a side is that the kerf eats up. */
  readonly nothing: T;
  /** What a workpiece of exactly this outline is as a piece, or as all that is cut from it next (a run). */
  readonly piece: (workpiece: Workpiece) => T;
  readonly both: (near: T, far: T) => T;
  readonly better: (a: T, b: T) => T;
}

/** The depth after one more cut; `any` nesting is counted as depth 0 throughout. */
export function deeper(plate: Plate, depth: number, isCrosscut: boolean): number {
  if (plate.stages === 'any') return 0;
  if (isCrosscut) return depth % 2 === 1 ? depth : depth + 1;
  return depth > 0 && depth % 2 === 0 ? depth : depth + (depth === 0 ? 2 : 1);
}

/** Everything that can be made of the plate; workpieces too small for any piece (`least`) are leftovers at once. */
export function makeAll<T>(
  plate: Plate,
  least: { readonly length: number; readonly width: number },
  how: Making<T>,
): T {
  const known = new Map<number, T>();
  const most = plate.stages === 'any' ? 0 : plate.stages;

  function solve(x: number, y: number, length: number, width: number, depth: number): T {
    if (length < least.length || width < least.width) return how.leftover(length, width);
    const key = (((depth * 32 + x) * 32 + y) * 32 + length) * 32 + width;
    const before = known.get(key);
    if (before !== undefined) return before;
    let best = how.better(how.leftover(length, width), how.piece({ x, y, length, width, depth }));
    const across = deeper(plate, depth, true);
    if (across <= most) {
      const kerf = plate.crosscutKerf;
      for (let at = kerf === 0 ? 1 : 1 - kerf; at < length; at += 1) {
        const far = length - at - kerf;
        const first = at > 0 ? solve(x, y, at, width, across) : how.nothing;
        const second = far > 0 ? solve(x + at + kerf, y, far, width, across) : how.nothing;
        best = how.better(best, how.both(first, second));
      }
    }
    const along = deeper(plate, depth, false);
    if (along <= most && length >= plate.shortestRip) {
      const kerf = plate.ripKerf;
      for (let at = kerf === 0 ? 1 : 1 - kerf; at < width; at += 1) {
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
