import type { Outline } from './outline.ts';
import type { Point } from './point.ts';

/** Two sides of a closed outline that cross, by index (side i runs from corner i to the next); null when none do. */
export function crossingSides(outline: Outline): readonly [number, number] | null {
  const count = outline.length;
  for (let i = 0; i < count; i += 1) {
    for (let j = i + 2; j < count; j += 1) {
      if (i === 0 && j === count - 1) continue;
      if (cross(outline[i]!, outline[i + 1]!, outline[j]!, outline[(j + 1) % count]!)) return [i, j];
    }
  }
  return null;
}

/** A tenth of a tick: what meets but for rounding touches, and touching is no crossing. */
const slack = 0.1;

function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const splitsCd = side(a, b, c) * side(a, b, d) < 0;
  return splitsCd && side(c, d, a) * side(c, d, b) < 0;
}

/** -1, 0 or 1: on which side of the line through a and b the point lies. */
function side(a: Point, b: Point, point: Point): number {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const away = ((b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x)) / Math.max(length, slack);
  return Math.abs(away) <= slack ? 0 : Math.sign(away);
}
