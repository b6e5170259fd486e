import { type Rectangle, contains, overlaps } from '../../base/geometry/rectangle.ts';
import type { CutLines } from './cut-lines.ts';
import { type CuttingSize, isCutting, leastLength, leastWidth } from './cutting-size.ts';
import { unionArea } from './union-area.ts';

/** What a search has so far and what it may still spend; changed in place as the search goes on. */
export interface CuttingRecord {
  cuttings: readonly Rectangle[];
  area: number;
  /** Areas not above this are of no interest (a requirement to be met, or the best area so far). */
  floor: number;
  /** The search stops when this area is reached; Infinity: never. */
  readonly wanted: number;
  /** Nodes left to look into. */
  budget: number;
  /** The largest bound among nodes left unlooked at for want of budget. */
  skipped: number;
}

/**
 * The best disjoint cuttings, one within each clear area, areas given (they may repeat and overlap).
 *
 * Branch and bound. Two areas that overlap must part: one cutting lies left of, right of, below or above the other, and
 * each area shrinks to its side of a line. The line is one of `lines` (see `cutLines`; worked out when first needed); when the two overlap nothing
 * else, their area is linear in its place and the two ends of its range are enough. The area of the union of all areas
 * bounds what can come of them. An area inside another that overlaps nothing else adds nothing, and is dropped.
 */
export function partAreas(
  areas: readonly Rectangle[],
  lines: () => CutLines,
  size: CuttingSize,
  record: CuttingRecord,
): void {
  if (record.area >= record.wanted) return;
  const kept = areas.filter((area) => isCutting(area, size));
  const bound = unionArea(kept);
  if (bound <= record.floor) return;
  if (record.budget <= 0) {
    record.skipped = Math.max(record.skipped, bound);
    return;
  }
  record.budget -= 1;
  const pair = widestOverlap(kept);
  if (pair === null) {
    const cuttings = withoutContained(kept);
    record.cuttings = cuttings;
    record.area = bound;
    record.floor = bound;
    return;
  }
  const { first, second } = pair;
  const rest = kept.filter((_, index) => index !== first && index !== second);
  const [a, b] = [kept[first]!, kept[second]!];
  const alone = !rest.some((other) => overlaps(other, a) || overlaps(other, b));
  eachParting(a, b, alone ? null : lines(), size, (one, other) =>
    partAreas([one, other, ...rest], lines, size, record),
  );
}

/** The two areas that overlap most, neither inside the other; null when none do. Indices. */
function widestOverlap(
  areas: readonly Rectangle[],
): { readonly first: number; readonly second: number } | null {
  let first = -1;
  let second = -1;
  let most = 0;
  for (let i = 0; i < areas.length; i += 1) {
    const a = areas[i]!;
    for (let j = i + 1; j < areas.length; j += 1) {
      const b = areas[j]!;
      const long = Math.min(a.x + a.length, b.x + b.length) - Math.max(a.x, b.x);
      const wide = Math.min(a.y + a.width, b.y + b.width) - Math.max(a.y, b.y);
      if (long <= 0 || wide <= 0 || long * wide <= most) continue;
      if (contains(a, b) || contains(b, a)) continue;
      most = long * wide;
      first = i;
      second = j;
    }
  }
  return first < 0 ? null : { first, second };
}

function withoutContained(areas: readonly Rectangle[]): Rectangle[] {
  return areas.filter(
    (area, index) =>
      !areas.some(
        (other, at) => at !== index && contains(other, area) && (at < index || !contains(area, other)),
      ),
  );
}

/**
 * All ways to part two overlapping areas, at the ends of each range and on the lines in it: what is left of each, in
 * their order.
 */
function eachParting(
  a: Rectangle,
  b: Rectangle,
  lines: CutLines | null,
  size: CuttingSize,
  visit: (a: Rectangle, b: Rectangle) => void,
): void {
  for (const swapped of [false, true]) {
    const near = swapped ? b : a;
    const far = swapped ? a : b;
    const give = (one: Rectangle, other: Rectangle): void =>
      swapped ? visit(other, one) : visit(one, other);
    const farEnd = far.x + far.length;
    const farTop = far.y + far.width;
    eachLine(
      Math.max(far.x, near.x + leastLength(near.width, size)),
      Math.min(near.x + near.length, farEnd - leastLength(far.width, size)),
      lines?.x,
      (line) => give({ ...near, length: line - near.x }, { ...far, x: line, length: farEnd - line }),
    );
    eachLine(
      Math.max(far.y, near.y + leastWidth(near.length, size)),
      Math.min(near.y + near.width, farTop - leastWidth(far.length, size)),
      lines?.y,
      (line) => give({ ...near, width: line - near.y }, { ...far, y: line, width: farTop - line }),
    );
  }
}

/** Places for a parting line in [low, high], the ends first: they are the likeliest. */
function eachLine(
  low: number,
  high: number,
  lines: readonly number[] | undefined,
  visit: (line: number) => void,
): void {
  if (low > high) return;
  visit(low);
  if (high > low) visit(high);
  if (lines === undefined) return;
  for (const line of lines) if (line > low && line < high) visit(line);
}
