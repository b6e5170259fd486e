/**
 * Normal patterns: the places a cut needs to look at when every piece is pushed towards the origin. They
 * are the starts, and every start plus a sum of steps, up to and including `length`.
 * Source: Herz 1972, IBM J. Res. Dev. 16(5), "canonical dissection"; Christofides & Whitlock 1977.
 * @param length ticks, > 0
 * @param steps lengths of pieces, ticks, > 0
 * @param starts where a row of pieces may begin: 0 and the far edges of what must be avoided
 * @returns ascending, without repeats. O(length / common divisor × steps).
 */
export function normalPoints(
  length: number,
  steps: readonly number[],
  starts: readonly number[] = [0],
): Int32Array {
  const fewest = fewestSteps(length, steps, starts);
  let count = 0;
  for (let at = 0; at < fewest.counts.length; at++) if (fewest.counts[at]! >= 0) count += 1;
  const points = new Int32Array(count);
  let filled = 0;
  for (let at = 0; at < fewest.counts.length; at++) {
    if (fewest.counts[at]! >= 0) points[filled++] = at * fewest.unit;
  }
  return points;
}

/** The fewest steps that lead to each multiple of the unit (the common divisor), -1 where none do. */
function fewestSteps(
  length: number,
  steps: readonly number[],
  starts: readonly number[],
): { counts: Int32Array; unit: number } {
  const unit = commonDivisor([...steps, ...starts]) || length;
  const counts = new Int32Array(Math.floor(length / unit) + 1).fill(-1);
  for (const start of starts) if (start >= 0 && start <= length) counts[start / unit] = 0;
  const strides = [...new Set(steps)].map((step) => step / unit);
  for (let at = 0; at < counts.length; at++) {
    const here = counts[at]!;
    if (here < 0) continue;
    for (const stride of strides) {
      const next = at + stride;
      if (next < counts.length && (counts[next]! < 0 || counts[next]! > here + 1)) counts[next] = here + 1;
    }
  }
  return { counts, unit };
}

/** Greatest common divisor of whole numbers ≥ 0; 0 when all are 0. */
export function commonDivisor(numbers: readonly number[]): number {
  let divisor = 0;
  for (const number of numbers) {
    let a = divisor;
    let b = number;
    while (b > 0) [a, b] = [b, a % b];
    divisor = a;
  }
  return divisor;
}

/** Index of the last point ≤ place; the first point must be ≤ place. */
export function lastNotAfter(points: Int32Array, place: number): number {
  let low = 0;
  let high = points.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (points[middle]! <= place) low = middle;
    else high = middle - 1;
  }
  return low;
}

/**
 * Raster points: of the normal patterns only those that are the best use of what some other one leaves,
 * { last p ≤ length − q : q a normal pattern }. Enough for the best pattern of the whole plate, as a piece
 * that can grow to the next raster point without pushing the others off the plate may as well do so. They
 * must be built from unlimited steps: growing may leave sums that limits would forbid.
 * Source: Terno, Lindemann & Scheithauer 1987; Scheithauer & Terno 1996, Oper. Res. Lett. 20.
 * @param points the normal patterns of `length` from 0
 */
export function rasterPoints(points: Int32Array, length: number): Int32Array {
  const kept = new Set<number>();
  for (const point of points) kept.add(points[lastNotAfter(points, length - point)]!);
  return Int32Array.from(kept).sort();
}

/**
 * Fewer points, still a fair picture: those reached by the fewest pieces first, then an even spread; the
 * first, the last two and the `must` always. No gap between two kept points grows to `widest` or beyond unless
 * it was there before.
 * @param most about how many to keep; the gaps may ask for more
 */
export function thinned(
  points: Int32Array,
  most: number,
  shape: { length: number; steps: readonly number[]; must: readonly number[]; widest: number },
): Int32Array {
  if (points.length <= most) return points;
  const { counts, unit } = fewestSteps(shape.length, shape.steps, shape.must);
  const kept = new Set<number>([points[0]!, points.at(-2)!, points.at(-1)!]);
  for (const point of shape.must) kept.add(points[lastNotAfter(points, point)]!);
  const ofPoint = (point: number): number => (point % unit === 0 ? counts[point / unit]! : Infinity);
  const easy = Array.from(points).sort((a, b) => ofPoint(a) - ofPoint(b) || a - b);
  for (const point of easy) {
    if (kept.size >= most * 0.6) break;
    kept.add(point);
  }
  const spread = Math.max(1, Math.floor(points.length / Math.max(1, most - kept.size)));
  for (let at = spread; at < points.length; at += spread) kept.add(points[at]!);
  let previous = points[0]!;
  for (let at = 1; at < points.length; at++) {
    const point = points[at]!;
    const next = points[at + 1];
    if (kept.has(point)) previous = point;
    else if (next !== undefined && next - previous >= shape.widest) {
      kept.add(point);
      previous = point;
    }
  }
  return Int32Array.from(kept).sort();
}
