import { inches, type Tick } from '../../base/units/tick.ts';
import type { Made } from './entry.ts';

/** A size of part that a later job may want, and how likely it is the next one wanted; the shares sum to 1. */
export interface Need {
  readonly length: Tick;
  readonly width: Tick;
  readonly thickness: Tick;
  readonly share: number;
}

/**
 * Sizes of small solid-wood parts as a shop comes to need them, in inches, with weights: short ends and cleats, drawer
 * parts, rails and stiles, shelves, panels for a mantel. Common practice, no source; it only stands in until the
 * journal has a history of its own.
 */
const usual: readonly (readonly [
  what: string,
  length: number,
  width: number,
  thickness: number,
  weight: number,
])[] = [
  ['cleat', 12, 1.5, 0.75, 2],
  ['drawer end', 14, 3.5, 0.75, 3],
  ['short rail', 16, 2.25, 0.75, 3],
  ['mantel end', 8, 6, 0.75, 2],
  ['drawer side', 20, 4, 0.75, 3],
  ['rail', 24, 2.5, 0.75, 4],
  ['stile', 30, 2.25, 0.75, 4],
  ['small shelf', 24, 7.25, 0.75, 2],
  ['apron', 36, 4, 0.75, 2],
  ['shelf', 36, 9.25, 0.75, 1],
  ['long stile', 48, 3, 0.75, 2],
  ['mantel panel', 60, 6.5, 0.75, 1],
];

/** What is wanted of offcuts where the journal tells of no job yet. */
export const usualNeeds: readonly Need[] = withShares(
  usual.map(([, length, width, thickness, weight]) => ({
    length: inches(length),
    width: inches(width),
    thickness: inches(thickness),
    weight,
  })),
);

/** So many sizes of the history are kept: the most frequent ones, for speed. */
const mostNeeds = 60;

/**
 * What later jobs may need, judged by what jobs so far have cut: each size by how many were cut. Where there is no
 * history, the usual sizes.
 */
export function needsOf(made: readonly Made[]): readonly Need[] {
  const counted = new Map<string, Made>();
  for (const one of made) {
    if (one.length <= 0 || one.width <= 0) continue;
    const key = `${one.length} ${one.width} ${one.thickness}`;
    counted.set(key, { ...one, count: one.count + (counted.get(key)?.count ?? 0) });
  }
  if (counted.size === 0) return usualNeeds;
  const frequent = [...counted.values()].sort((a, b) => b.count - a.count).slice(0, mostNeeds);
  return withShares(frequent.map(({ count, ...size }) => ({ ...size, weight: count })));
}

function withShares(
  weighted: readonly (Omit<Need, 'share'> & { readonly weight: number })[],
): readonly Need[] {
  const total = weighted.reduce((sum, { weight }) => sum + weight, 0);
  return weighted.map(({ weight, ...size }) => ({ ...size, share: weight / total }));
}
