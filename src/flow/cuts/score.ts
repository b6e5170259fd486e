import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { ticksPerInch } from '../../base/units/tick.ts';
import type { CutRules } from './cut-tree.ts';

/** What a cut tree is judged by, in this order; all whole numbers, added over the tree. */
export interface Score {
  /** Square ticks of kept offcuts where they earn money back, else 0: more is better. */
  readonly earned: number;
  /** Fewer is better. */
  readonly cuts: number;
  /** Sum of `CutRules.offcutWorth`: more is better. */
  readonly offcuts: number;
  /** Cuts at a position no other cut of the job needs: fewer is better. */
  readonly misfits: number;
}

export const nothing: Score = { earned: 0, cuts: 0, offcuts: 0, misfits: 0 };

/** The score of a cut and of what its two sides come to. */
export function addScores(a: Score, b: Score, c: Score): Score {
  return {
    earned: a.earned + b.earned + c.earned,
    cuts: a.cuts + b.cuts + c.cuts,
    offcuts: a.offcuts + b.offcuts + c.offcuts,
    misfits: a.misfits + b.misfits + c.misfits,
  };
}

/** Strictly better; equal scores keep the one found first. */
export function isBetter(a: Score, b: Score): boolean {
  if (a.earned !== b.earned) return a.earned > b.earned;
  if (a.cuts !== b.cuts) return a.cuts < b.cuts;
  if (a.offcuts !== b.offcuts) return a.offcuts > b.offcuts;
  return a.misfits < b.misfits;
}

/** Whether a leftover is long and wide enough for the rack. */
export function isKeepable(
  region: Rectangle,
  rules: Pick<CutRules, 'leastOffcutLength' | 'leastOffcutWidth'>,
): boolean {
  return region.length >= rules.leastOffcutLength && region.width >= rules.leastOffcutWidth;
}

/**
 * Area (square inches) squared × length (inches), to a whole number: grows faster than the area, so that one large
 * offcut beats two small ones, and of two equally large ones the longer wins. Our own measure, no source.
 */
export function offcutMeasure(region: Rectangle): number {
  const length = region.length / ticksPerInch;
  const area = length * (region.width / ticksPerInch);
  return Math.round(area * area * length);
}

/** What a leftover adds to the score. */
export function leftoverScore(region: Rectangle, rules: CutRules): Score {
  if (!isKeepable(region, rules)) return nothing;
  const earned = rules.offcutsEarn ? region.length * region.width : 0;
  return { earned, cuts: 0, offcuts: rules.offcutWorth(region), misfits: 0 };
}
