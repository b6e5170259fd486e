import { type Rectangle, contains, overlaps } from '../../base/geometry/rectangle.ts';

/**
 * The largest clear rectangles: every rectangle that keeps clear of the blocked ones and cannot grow on any side.
 * Every clear rectangle lies in at least one of them.
 *
 * Start from the whole board; each blocked rectangle replaces a clear area that it overlaps by what is left of it on
 * its four sides. What lies inside another is dropped, so is what `admits` refuses (it must refuse everything smaller
 * than what it refuses). O(areas² · blocked).
 * @returns largest area first; ties by x, then y
 */
export function clearAreas(
  board: Rectangle,
  blocked: readonly Rectangle[],
  admits: (area: Rectangle) => boolean,
): Rectangle[] {
  let areas: readonly Rectangle[] = admits(board) ? [board] : [];
  for (const hole of blocked) areas = keepingClear(areas, hole, admits);
  return [...areas].sort((a, b) => b.length * b.width - a.length * a.width || a.x - b.x || a.y - b.y);
}

/**
 * The largest clear rectangles when one more rectangle is blocked, from those before it. Unordered.
 * Areas that keep clear of the hole stay largest: only what was trimmed can lie inside another.
 */
export function keepingClear(
  areas: readonly Rectangle[],
  hole: Rectangle,
  admits: (area: Rectangle) => boolean,
): readonly Rectangle[] {
  if (!areas.some((area) => overlaps(area, hole))) return areas;
  const kept: Rectangle[] = [];
  const trimmed: Rectangle[] = [];
  for (const area of areas) {
    if (overlaps(area, hole)) besides(area, hole, admits, trimmed);
    else kept.push(area);
  }
  const largest = trimmed.filter(
    (area, index) =>
      !kept.some((other) => contains(other, area)) &&
      !trimmed.some(
        (other, at) => at !== index && contains(other, area) && (at < index || !contains(area, other)),
      ),
  );
  return [...kept, ...largest];
}

/**
 * What is left of an area left of, right of, below and above a hole in it, if it is admitted; the four may overlap at the
 * corners.
 */
function besides(
  area: Rectangle,
  hole: Rectangle,
  admits: (area: Rectangle) => boolean,
  into: Rectangle[],
): void {
  const { x, y, length, width } = area;
  const keep = (rest: Rectangle): void => {
    if (rest.length > 0 && rest.width > 0 && admits(rest)) into.push(rest);
  };
  const [right, top] = [hole.x + hole.length, hole.y + hole.width];
  keep({ x, y, length: hole.x - x, width });
  keep({ x: right, y, length: x + length - right, width });
  keep({ x, y, length, width: hole.y - y });
  keep({ x, y: top, length, width: y + width - top });
}
