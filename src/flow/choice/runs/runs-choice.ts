import type { Job } from '../../stock/job.ts';
import type { Choice } from '../choice.ts';
import { valueOf } from '../kinds.ts';
import type { BreakWay } from './break-way.ts';

/** Why a way to break the runs was passed over for a worse one. */
export type PassedOver =
  /** Some stretch has room on no board. */
  | 'no board'
  /** Proven: with it not all parts can be laid out. */
  | 'no layout'
  /** No layout of all parts was found with it. */
  | 'not found'
  /** Grain is broken for money here. */
  | 'dearer';

/** A choice, and how far the grain runs on in it. */
export interface RunsChoice {
  /** The way taken; its job is the one that the choice is of. */
  readonly way: BreakWay;
  readonly choice: Choice;
  /** The better ways, the best first, and why each was passed over. */
  readonly passed: readonly { readonly way: BreakWay; readonly why: PassedOver }[];
  /** What the best of them costs where it was passed over for money. */
  readonly best: Choice | null;
}

/** Worth of what a choice leaves short. */
export function missingWorth({ parts }: Job, { short }: Choice): number {
  return short.reduce((sum, { part, copies }) => sum + copies * Math.max(valueOf(parts[part]!), 1e-9), 0);
}

/** All ways before the one taken, those that no look was given being without room on the boards. */
export function passedBefore(
  ways: readonly BreakWay[],
  taken: BreakWay,
  verdicts: ReadonlyMap<BreakWay, PassedOver>,
): RunsChoice['passed'] {
  return ways
    .slice(0, ways.indexOf(taken))
    .map((way) => ({ way, why: verdicts.get(way) ?? ('no board' as const) }));
}
