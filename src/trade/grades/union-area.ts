import type { Rectangle } from '../../base/geometry/rectangle.ts';

/**
 * Area that the rectangles cover together, overlaps counted once. Square ticks, exact.
 * Each rectangle is cut up by those before it; for the few rectangles of a cutting search that beats a sweep.
 */
export function unionArea(rectangles: readonly Rectangle[]): number {
  let sum = 0;
  for (let index = 0; index < rectangles.length; index += 1) {
    const { x, y, length, width } = rectangles[index]!;
    sum += uncoveredBox(x, y, x + length, y + width, rectangles, 0, index);
  }
  return sum;
}

/** Area of the rectangle that none of the others covers. */
export function uncovered({ x, y, length, width }: Rectangle, others: readonly Rectangle[]): number {
  return uncoveredBox(x, y, x + length, y + width, others, 0, others.length);
}

/**
 * Area of the box [x1, x2] × [y1, y2] that none of `others[from..to)` covers.
 *
 *     +-----------------------+
 *     |        above          |   The first overlapping one splits the box into these four; each is then held
 *     +------+-------+--------+   against those that follow. Plain numbers: this is the grader's hot spot.
 *     | left | other | right  |
 *     +------+-------+--------+
 *     |        below          |
 *     +-----------------------+
 */
function uncoveredBox(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  others: readonly Rectangle[],
  from: number,
  to: number,
): number {
  for (let index = from; index < to; index += 1) {
    const other = others[index]!;
    const left = Math.max(x1, other.x);
    const right = Math.min(x2, other.x + other.length);
    if (left >= right) continue;
    const low = Math.max(y1, other.y);
    const high = Math.min(y2, other.y + other.width);
    if (low >= high) continue;
    const next = index + 1;
    let sum = 0;
    if (y1 < low) sum += uncoveredBox(x1, y1, x2, low, others, next, to);
    if (high < y2) sum += uncoveredBox(x1, high, x2, y2, others, next, to);
    if (x1 < left) sum += uncoveredBox(x1, low, left, high, others, next, to);
    if (right < x2) sum += uncoveredBox(right, low, x2, high, others, next, to);
    return sum;
  }
  return (x2 - x1) * (y2 - y1);
}
