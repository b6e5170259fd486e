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
  const [first, second] = pair;
  const rest = kept.filter((_, index) => index !== first && index !== second);
  const [a, b] = [kept[first]!, kept[second]!];
  const alone = !rest.some((other) => overlaps(other, a) || overlaps(other, b));
  for (const [one, other] of partings(a, b, alone ? null : lines(), size)) {
    partAreas([one, other, ...rest], lines, size, record);
  }
}

/** The two areas that overlap most, neither inside the other; null when none do. Indices. */
function widestOverlap(areas: readonly Rectangle[]): [number, number] | null {
  let best: [number, number] | null = null;
  let most = 0;
  for (let i = 0; i < areas.length; i += 1) {
    for (let j = i + 1; j < areas.length; j += 1) {
      const [a, b] = [areas[i]!, areas[j]!];
      if (!overlaps(a, b) || contains(a, b) || contains(b, a)) continue;
      const long = Math.min(a.x + a.length, b.x + b.length) - Math.max(a.x, b.x);
      const wide = Math.min(a.y + a.width, b.y + b.width) - Math.max(a.y, b.y);
      if (long * wide > most) {
        most = long * wide;
        best = [i, j];
      }
    }
  }
  return best;
}

function withoutContained(areas: readonly Rectangle[]): Rectangle[] {
  return areas.filter(
    (area, index) =>
      !areas.some(
        (other, at) => at !== index && contains(other, area) && (at < index || !contains(area, other)),
      ),
  );
}

/** All ways to part two overlapping areas, at the ends of each range and on the lines in it: [rest of a, rest of b]. */
function* partings(
  a: Rectangle,
  b: Rectangle,
  lines: CutLines | null,
  size: CuttingSize,
): Generator<readonly [Rectangle, Rectangle]> {
  for (const swapped of [false, true]) {
    const [near, far] = swapped ? [b, a] : [a, b];
    const lengthsLeft = leastLength(near.width, size);
    const x = range(
      Math.max(far.x, near.x + lengthsLeft),
      Math.min(near.x + near.length, far.x + far.length - leastLength(far.width, size)),
      lines?.x ?? [],
    );
    for (const line of x) {
      const left = { ...near, length: line - near.x };
      const right = { ...far, x: line, length: far.x + far.length - line };
      yield swapped ? [right, left] : [left, right];
    }
    const y = range(
      Math.max(far.y, near.y + leastWidth(near.length, size)),
      Math.min(near.y + near.width, far.y + far.width - leastWidth(far.length, size)),
      lines?.y ?? [],
    );
    for (const line of y) {
      const below = { ...near, width: line - near.y };
      const above = { ...far, y: line, width: far.y + far.width - line };
      yield swapped ? [above, below] : [below, above];
    }
  }
}

/** Places for a parting line in [low, high], the ends first: they are the likeliest. */
function range(low: number, high: number, lines: readonly number[]): number[] {
  if (low > high) return [];
  if (low === high) return [low];
  return [low, high, ...lines.filter((line) => line > low && line < high)];
}
