import type { Meter } from '../meter.ts';

/** Most buckets of the table; longer sticks are measured in steps of more than one. */
const mostBuckets = 12_000;

/**
 * What the rest of a stick can still be worth, by knapsack over the kinds in order (longest first):
 *
 *     U[k][r] = max Σ_{j ≥ k} worth_j · n_j   subject to  Σ ⌊length_j / step⌋ n_j ≤ r,  n_j ≤ cap_j
 *
 * With step 1 it is exact; with a longer step (sticks of very many units) an upper bound, since
 * Σ ⌊length / step⌋ ≤ ⌊Σ length / step⌋.
 */
export interface SuffixTable {
  readonly lengths: Int32Array;
  readonly step: number;
  /** Buckets per kind: the longest stick's, and one for zero. */
  readonly width: number;
  /** U, kind by kind; one more row of zeros after the last kind. */
  readonly values: Float64Array;
}

/** What it is worth to take kind k where r is left, beside its worth; −Infinity forbids it. Absent: 0 everywhere. */
export type ArcWorth = readonly (Float64Array | undefined)[];

/** Opens the table of best loads over the last pieces, for bounding a search over the first ones. */
export function openSuffixTable(lengths: Int32Array, longest: number): SuffixTable {
  const step = Math.max(1, Math.ceil(longest / mostBuckets));
  const width = Math.floor(longest / step) + 1;
  return { lengths, step, width, values: new Float64Array((lengths.length + 1) * width) };
}

/** Fills the table for these worths and caps. O(Σ cap × buckets). `arcs` only with step 1. */
export function fillSuffixTable(
  table: SuffixTable,
  worth: Float64Array,
  caps: Int32Array,
  meter: Meter,
  arcs?: ArcWorth,
): void {
  const { lengths, step, width, values } = table;
  for (let k = lengths.length - 1; k >= 0; k -= 1) {
    const row = k * width;
    values.copyWithin(row, row + width, row + 2 * width);
    const extra = arcs?.[k];
    const each = worth[k]!;
    const length = Math.floor(lengths[k]! / step);
    if (extra === undefined && each <= 0) continue;
    const most = Math.min(caps[k]!, length === 0 ? caps[k]! : Math.floor((width - 1) / length));
    for (let copy = 0; copy < most; copy += 1) {
      // Downwards, so that what is read still belongs to one copy less.
      for (let r = width - 1; r >= length; r -= 1) {
        const value = values[row + r - length]! + each + (extra === undefined ? 0 : extra[r]!);
        if (value > values[row + r]!) values[row + r] = value;
      }
    }
    meter.spent += (most + 1) * width * 0.15;
  }
}

/** An upper bound on what a stick of this length can hold; exact when the step is 1. */
export function suffixBound(table: SuffixTable, length: number): number {
  return table.values[Math.floor(length / table.step)]!;
}
