/** Greatest common divisor of two whole numbers, gcd(0, b) = b. */
function gcd(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

/** A step that may be taken from any reached position: its size, and how often at most along one path. */
export interface Step {
  readonly size: number;
  readonly cap: number;
}

/** Above this many cells the sums are collected on a coarser grid instead (see `coarse`). */
const mostCells = 2_500_000;

/**
 * The positions that sums of steps can reach from the origins, up to `limit`, ascending: Herz's normal
 * patterns with the demand caps respected (Herz 1972, IBM J. Res. Dev. 16; Christofides and Whitlock 1977).
 * Origins beside 0 are where a piece is pushed against a defect. `limit` itself is always in the list.
 * A path that passes an origin starts counting anew, so the set is a superset of what is needed, never less.
 * @param limit whole number > 0   @param origins whole numbers ≥ 0; those over the limit are dropped
 * @returns null when the numbers are so large and so free of a common divisor that listing them is hopeless
 */
export function reachablePositions(
  limit: number,
  origins: readonly number[],
  steps: readonly Step[],
): number[] | null {
  let unit = 0;
  for (const origin of origins) unit = gcd(unit, origin);
  for (const step of steps) unit = gcd(unit, step.size);
  if (unit === 0) return [...new Set([0, limit])];
  const cells = Math.floor(limit / unit) + 1;
  if (cells > mostCells) return null;
  const reached = new Uint8Array(cells);
  for (const origin of origins) if (origin <= limit) reached[origin / unit] = 1;
  const used = new Uint16Array(cells);
  for (const { size, cap } of steps) {
    const stride = size / unit;
    if (stride >= cells || cap <= 0) continue;
    used.fill(0);
    for (let at = stride; at < cells; at += 1) {
      if (reached[at] === 1 || reached[at - stride] === 0) continue;
      const count = used[at - stride]! + 1;
      if (count > cap) continue;
      reached[at] = 1;
      used[at] = count;
    }
  }
  const positions: number[] = [];
  for (let at = 0; at < cells; at += 1) if (reached[at] === 1) positions.push(at * unit);
  if (positions[positions.length - 1] !== limit) positions.push(limit);
  return positions;
}

/**
 * Keeps at most `most` of the positions, evenly by rank, always the origins and the last.
 * A pattern laid on the thinner raster is still a pattern (each piece moves right to the next position);
 * a bound must round the other way, which the caller asks for when it builds the raster's steps.
 */
export function thin(
  positions: readonly number[],
  most: number,
  keep: ReadonlySet<number>,
  widest: number,
): number[] {
  if (positions.length <= most) return [...positions];
  const every = positions.length / most;
  const last = positions.length - 1;
  let due = 0;
  let before = positions[0]!;
  return positions.filter((position, rank) => {
    const wide = rank < last && positions[rank + 1]! - before > widest;
    const take = rank >= due || rank === last || keep.has(position) || wide;
    if (rank >= due) due += every;
    if (take) before = position;
    return take;
  });
}

/** At least `count` positions evenly spread over 0..limit, no gap wider than `widest`, with the origins: for when the sums cannot be listed. */
export function evenPositions(
  limit: number,
  origins: readonly number[],
  count: number,
  widest: number,
): number[] {
  const parts = Math.max(count, Math.ceil(limit / widest) + 1);
  const set = new Set<number>([0, limit]);
  for (const origin of origins) if (origin <= limit) set.add(origin);
  for (let i = 1; i < parts; i += 1) set.add(Math.floor((limit * i) / parts));
  return [...set].sort((a, b) => a - b);
}

/** Index of the first position ≥ value, or the list's length. */
export function ceilIndex(positions: ArrayLike<number>, value: number): number {
  let low = 0;
  let high = positions.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (positions[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
