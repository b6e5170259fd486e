import { type Rectangle, overlaps } from '../../base/geometry/rectangle.ts';

/**
 * Area that the rectangles cover together, overlaps counted once. Square ticks, exact.
 * Each rectangle is cut up by those before it; for the few rectangles of a cutting search that beats a sweep.
 */
export function unionArea(rectangles: readonly Rectangle[]): number {
  return rectangles.reduce((sum, rectangle, index) => sum + uncovered(rectangle, rectangles, 0, index), 0);
}

/**
 * Area of `rectangle` that none of `others[from..to)` covers.
 *
 *     +-----------------------+
 *     |        above          |   The first overlapping one splits the rectangle into these
 *     +------+-------+--------+   four; each is then held against those that follow.
 *     | left | other | right  |
 *     +------+-------+--------+
 *     |        below          |
 *     +-----------------------+
 */
export function uncovered(
  rectangle: Rectangle,
  others: readonly Rectangle[],
  from = 0,
  to = others.length,
): number {
  for (let index = from; index < to; index += 1) {
    const other = others[index]!;
    if (!overlaps(rectangle, other)) continue;
    return split(rectangle, other).reduce((sum, rest) => sum + uncovered(rest, others, index + 1, to), 0);
  }
  return rectangle.length * rectangle.width;
}

function split(rectangle: Rectangle, other: Rectangle): Rectangle[] {
  const { x, y, length, width } = rectangle;
  const [x2, y2] = [x + length, y + width];
  const [left, right] = [Math.max(x, other.x), Math.min(x2, other.x + other.length)];
  const [low, high] = [Math.max(y, other.y), Math.min(y2, other.y + other.width)];
  const rests = [
    { x, y, length, width: low - y },
    { x, y: high, length, width: y2 - high },
    { x, y: low, length: left - x, width: high - low },
    { x: right, y: low, length: x2 - right, width: high - low },
  ];
  return rests.filter((rest) => rest.length > 0 && rest.width > 0);
}
