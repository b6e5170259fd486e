import type { Job } from '../../stock/job.ts';
import type { Choice } from '../choice.ts';
import { choose } from '../choose.ts';
import { valueOf } from '../kinds.ts';
import { type Progress, type Solve, type SolveOptions, retold, within } from '../progress.ts';
import { glueTogether } from './glue-together.ts';
import { type WayToMake, partMade } from './way-to-make.ts';

/** One way for each part, as indices into its list of ways. */
export type MakingPlan = readonly number[];

/** A job, and the ways in which each of its parts may be made. */
export interface Making {
  readonly job: Job;
  readonly ways: readonly (readonly WayToMake[])[];
  /** Parts with more than one way, the largest first. */
  readonly open: readonly number[];
}

/** What came of one plan. */
export interface Tried {
  readonly plan: MakingPlan;
  readonly choice: Choice;
  /** Whether it is proven that the parts, made so, cannot all be laid out. */
  readonly isRuledOut: boolean;
  /** Under `least cost`: what a layout of all parts, made so, costs at least. */
  readonly leastWhole: number;
}

/** The job with its parts made by one plan, solved and glued together. */
export function* solvePlan(
  { job, ways, open }: Making,
  plan: MakingPlan,
  options: SolveOptions,
): Generator<Progress<Choice>, Tried, void> {
  const made = plan.map((at, index) => ways[index]![at]!);
  const parts = job.parts.map((part, index) => partMade(job, part, made[index]!));
  const steps = within(choose({ ...job, parts }, options), (cut) =>
    cut === null ? null : glueTogether(job, cut, made),
  );
  const cut = yield* open.length > 0 ? silent(steps) : steps;
  const isRuledOut = cut.cannotHold === true;
  const leastWhole = cut.short.length > 0 ? (cut.leastWhole ?? 0) : cut.proof.bound;
  return { plan, choice: glueTogether(job, cut, made), isRuledOut, leastWhole };
}

/** Drives a solve that is one of several: what bounds it bounds not the whole. */
export function silent(steps: Solve): Solve {
  return retold(steps, (said) => ({ ...said, bound: null }));
}

/** Two values closer than this are one. */
const tolerance = 1e-9;

/** Fewest short by worth, then the goal's value; the first of equals. @param tried at least one */
export function bestOf<T extends Pick<Tried, 'choice'>>(job: Job, tried: readonly T[]): T {
  const sign = job.shop.goal === 'most value' ? -1 : 1;
  const missing = ({ choice }: T): number =>
    choice.short.reduce(
      (sum, { part, copies }) => sum + copies * Math.max(valueOf(job.parts[part]!), 1e-9),
      0,
    );
  return tried.reduce((best, one) => {
    const apart = missing(one) - missing(best);
    if (Math.abs(apart) > tolerance) return apart < 0 ? one : best;
    return sign * one.choice.proof.value < sign * best.choice.proof.value ? one : best;
  });
}
