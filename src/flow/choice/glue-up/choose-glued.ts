import type { Job } from '../../stock/job.ts';
import type { Choice, Proof } from '../choice.ts';
import { choose } from '../choose.ts';
import { valueOf } from '../kinds.ts';
import type { Progress, Solve, SolveOptions } from '../progress.ts';
import { corePart } from './core-part.ts';
import { glueTogether } from './glue-together.ts';
import { type WayToMake, partMade, waysToMake } from './way-to-make.ts';

/** Shares of the effort: for the layout itself, for the bound, and for trying other ways to make the parts. */
const shares = { layout: 0.5, bound: 0.2, others: 0.3 };

/** So few plans of how to make the parts are all solved, and their bounds are the bound. */
const fewPlans = 4;

/** At an effort of 1 so many other plans are tried. */
const othersAtFullEffort = 8;

/** One way for each part, as indices into its list. */
type MakingPlan = readonly number[];

/** Two values closer than this share are one. */
const tolerance = 1e-9;

interface Tried {
  readonly plan: MakingPlan;
  readonly choice: Choice;
  /** Whether it is proven that the parts, made so, cannot all be laid out. */
  readonly isRuledOut: boolean;
}

/**
 * As `choose`, but a part may instead be made of equal strips, edge-joined, from boards of one tone (DESIGN, section 6).
 * All copies of a part are made in one way. First each in the first way that some board allows; where parts stay short,
 * in the next; then, as far as the effort goes, one part at a time is made otherwise, the largest first, and the better
 * plan kept.
 *
 * The bound is the least of all plans' bounds where there are few plans and one copy of each such part; else that of the
 * job in which such parts are replaced by what every way to make them has in it (see `corePart`).
 */
export function* chooseGlued(job: Job, options: SolveOptions): Solve {
  const ways = job.parts.map((part) => waysToMake(job, part));
  const open = ways.flatMap((list, index) => (list.length > 1 ? [index] : []));
  const first: MakingPlan = ways.map(() => 0);
  if (open.length === 0) return (yield* solved(job, ways, first, options)).choice;
  const plans = open.reduce((product, index) => product * ways[index]!.length, 1);
  const areAllSolved = plans <= fewPlans && open.every((index) => job.parts[index]!.quantity === 1);
  if (areAllSolved) {
    const each = { ...options, effort: options.effort / plans };
    const tried: Tried[] = [];
    for (const plan of everyPlan(ways)) tried.push(yield* solved(job, ways, plan, each));
    return withBound(job, bestOf(job, tried).choice, boundOf(job, tried));
  }
  const best = yield* search(job, ways, open, first, options);
  const core = job.parts.map((part, index) =>
    open.includes(index) ? corePart(job, part, ways[index]!) : partMade(job, part, ways[index]![0]!),
  );
  const relaxed = yield* silent(
    choose({ ...job, parts: core }, { ...options, effort: shares.bound * options.effort }),
  );
  return withBound(job, best, relaxed.short.length > 0 ? null : relaxed.proof.bound);
}

/** The job with its parts made by one plan, solved and glued together. */
function* solved(
  job: Job,
  ways: readonly WayToMake[][],
  plan: MakingPlan,
  options: SolveOptions,
): Generator<Progress, Tried, void> {
  const made = plan.map((at, index) => ways[index]![at]!);
  const parts = job.parts.map((part, index) => partMade(job, part, made[index]!));
  const isOpen = ways.some((list) => list.length > 1);
  const steps = choose({ ...job, parts }, options);
  const cut = yield* isOpen ? silent(steps) : steps;
  const isRuledOut = cut.short.length > 0 && cut.proof.proven;
  return { plan, choice: glueTogether(job, cut, made), isRuledOut };
}

/** Drives a solve that is one of several: what bounds it bounds not the whole. */
function* silent(steps: Solve): Solve {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return step.value;
    yield { ...step.value, bound: null } satisfies Progress;
  }
}

function* search(
  job: Job,
  ways: readonly WayToMake[][],
  open: readonly number[],
  first: MakingPlan,
  options: SolveOptions,
): Solve {
  const layout = { ...options, effort: shares.layout * options.effort };
  let best = yield* solved(job, ways, first, layout);
  const stopped = (): boolean => options.stop?.() === true;
  for (let next = laterWhereShort(ways, best); next !== null && !stopped();) {
    const tried = yield* solved(job, ways, next, layout);
    best = bestOf(job, [best, tried]);
    next = laterWhereShort(ways, tried);
  }
  const size = (index: number): number => job.parts[index]!.length * job.parts[index]!.width;
  const largestFirst = [...open].sort((a, b) => size(b) - size(a));
  const others = Math.floor(Math.min(1, options.effort) * othersAtFullEffort);
  const each = { ...options, effort: (shares.others * options.effort) / Math.max(1, others) };
  for (let at = 0; at < others && !stopped(); at += 1) {
    const index = largestFirst[at % largestFirst.length]!;
    const step = 1 + Math.floor(at / largestFirst.length);
    const plan = best.plan.map((way, part) => (part === index ? (way + step) % ways[part]!.length : way));
    best = bestOf(job, [best, yield* solved(job, ways, plan, each)]);
  }
  return best.choice;
}

/** The plan with the next way for each part that is short; null where there is none left. */
function laterWhereShort(ways: readonly WayToMake[][], { plan, choice }: Tried): MakingPlan | null {
  const isShort = (part: number): boolean => choice.short.some((short) => short.part === part);
  const next = plan.map((at, part) => (isShort(part) && at + 1 < ways[part]!.length ? at + 1 : at));
  return next.some((at, part) => at !== plan[part]) ? next : null;
}

function* everyPlan(ways: readonly WayToMake[][]): Generator<MakingPlan> {
  const counts = ways.map((list) => list.length);
  const all = counts.reduce((product, count) => product * count, 1);
  for (let number = 0; number < all; number += 1) {
    let rest = number;
    yield counts.map((count) => {
      const at = rest % count;
      rest = Math.floor(rest / count);
      return at;
    });
  }
}

/** Fewest short by worth, then the goal's value; the first of equals. */
function bestOf(job: Job, tried: readonly Tried[]): Tried {
  const sign = job.shop.goal === 'most value' ? -1 : 1;
  const missing = ({ choice }: Tried): number =>
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

/** The bound of all plans together: of those that may lay out everything; null where one of them lacks some part. */
function boundOf(job: Job, tried: readonly Tried[]): number | null {
  const bounds = tried.map(({ choice }) => choice.proof.bound);
  if (job.shop.goal === 'most value') return Math.max(...bounds);
  const rivals = tried.filter(({ isRuledOut }) => !isRuledOut);
  if (rivals.length === 0 || rivals.some(({ choice }) => choice.short.length > 0)) return null;
  return Math.min(...rivals.map(({ choice }) => choice.proof.bound));
}

function withBound(job: Job, choice: Choice, bound: number | null): Choice {
  const { value } = choice.proof;
  const isMost = job.shop.goal === 'most value';
  const all = job.parts.reduce((sum, part) => sum + part.quantity * valueOf(part), 0);
  const isKnown = bound !== null && (isMost || choice.short.length === 0);
  const limit = isMost ? Math.max(value, isKnown ? bound : all) : Math.min(value, isKnown ? bound : 0);
  const apart = Math.abs(value - limit);
  const proven = apart <= 1e-7 * (1 + Math.abs(value));
  const gap = proven ? 0 : value === 0 ? 1 : apart / Math.abs(value);
  const proof: Proof = { value, bound: proven ? value : limit, gap, proven };
  return { ...choice, proof };
}
