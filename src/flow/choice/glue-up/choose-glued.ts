import type { Job } from '../../stock/job.ts';
import type { Choice, Proof } from '../choice.ts';
import { valueOf } from '../kinds.ts';
import { type Progress, type Solve, type SolveOptions, within } from '../progress.ts';
import { alikeParts } from './alike.ts';
import { searchAllWays } from './all-ways.ts';
import { type Making, type MakingPlan, type Tried, bestOf, solvePlan } from './making-plan.ts';
import { isOutOfReach } from '../standing.ts';
import { type WayToMake, waysToMake } from './way-to-make.ts';

/** Shares of the effort: the best plans once more, and all ways to make the parts at once. */
const shares = { layout: 0.6, plans: 0.4, neighbour: 0.05 };

/** So many plans are looked at longer, and so many of their neighbours at an effort of 1. */
const plansLookedAt = 2;
const neighboursAtFullEffort = 8;

/** Below this effort there is nothing to look longer with. */
const effortToLookAgain = 0.2;

/** With little effort a first layout within this share of the bound will do. */
const closeEnough = 0.03;

/** So few plans of how to make the parts are all solved, and their bounds are the bound. */
const fewPlans = 4;

/**
 * As `choose`, but a part may instead be made of equal strips, edge-joined, from boards of one species and tone (DESIGN, section 6).
 * All copies of a part are made in one way; which way for which part is a plan. Few plans are all solved. Of many, a few
 * have a first layout, and the bound is that of all ways at once (see `searchAllWays`), whose own plan is looked at longer.
 */
export function* chooseGlued(job: Job, options: SolveOptions): Solve {
  const making = makingOf(job);
  const { ways, open } = making;
  if (open.length === 0) {
    const only = yield* solvePlan(
      making,
      ways.map(() => 0),
      options,
    );
    return { ...only.choice, ...lackOf(job, only.choice, only.leastWhole, only.isRuledOut) };
  }
  const plans = open.reduce((product, index) => product * ways[index]!.length, 1);
  if (plans <= fewPlans && open.every((index) => job.parts[index]!.quantity === 1)) {
    const each = { ...options, effort: options.effort / plans };
    const tried: Tried[] = [];
    for (const plan of everyPlan(ways)) {
      tried.push(yield* within(solvePlan(making, plan, each), soFarOf(job, tried)));
      if (isAnswered(options, tried)) break;
    }
    const isNone = tried.length === plans && tried.every(({ isRuledOut }) => isRuledOut);
    return withBound(job, bestOf(job, tried).choice, boundOfAll(job, tried), isNone);
  }
  const start = yield* started(making, options);
  if (isAnswered(options, [start])) return withBound(job, start.choice, null, false);
  return yield* bettered(making, start, options);
}

/** The best of what is tried and what is being tried: nothing bounds all ways before each is looked at. */
function soFarOf(job: Job, tried: readonly Tried[]): (choice: Choice | null) => Choice | null {
  return (choice) => {
    const known = [...tried, ...(choice === null ? [] : [{ choice }])];
    return known.length === 0 ? null : withBound(job, bestOf(job, known).choice, null);
  };
}

/** From a first layout on: all ways at once for a bound, then the best plans known looked at longer. */
function* bettered(making: Making, start: Tried, options: SolveOptions): Solve {
  const { job } = making;
  const stopped = (): boolean => options.stop?.() === true;
  const { short, proof } = start.choice;
  const isMost = job.shop.goal === 'most value';
  const cutoff = isMost || short.length > 0 ? Infinity : proof.value;
  const tried = [start];
  const soFar = soFarOf(job, tried);
  const all = searchAllWays(making, cutoff, { ...options, effort: shares.plans * options.effort });
  const found = yield* within(all, () => soFar(null));
  const cannotHold = !isMost && found.bound !== null && isOutOfReach(slots(job), found.bound);
  if (found.choice !== null) tried.push({ ...start, choice: found.choice });
  const nearest = found.plan ?? start.plan;
  const plans = distinct(making, [nearest, start.plan, ...neighbours(making, nearest)]);
  // With little effort a plan laid out before is not worth another look.
  const isQuick = options.effort < effortToLookAgain;
  const most = isQuick ? 1 : plansLookedAt + Math.floor(Math.min(1, options.effort) * neighboursAtFullEffort);
  for (const [turn, plan] of plans.slice(0, most).entries()) {
    if (stopped() || isMet(job, bestOf(job, tried), found.bound)) break;
    if (isAnswered(options, tried) || (options.untilKnown === true && cannotHold)) break;
    if (isQuick && plan.join() === start.plan.join()) break;
    const share = isQuick ? 0 : turn < plansLookedAt ? shares.layout / plansLookedAt : shares.neighbour;
    const steps = solvePlan(making, plan, { ...options, effort: share * options.effort });
    tried.push(yield* within(steps, soFar));
  }
  const isOpen = options.untilKnown !== true && !isMet(job, bestOf(job, tried), found.bound, closeEnough);
  if (isQuick && !stopped() && isOpen) {
    const steps = solvePlan(making, nearest, { ...options, effort: shares.layout * options.effort });
    tried.push(yield* within(steps, soFar));
  }
  return withBound(job, bestOf(job, tried).choice, found.bound, cannotHold);
}

/** Whether it was asked only if all parts can be laid out, and one of these has them all. */
function isAnswered({ untilKnown }: SolveOptions, tried: readonly Tried[]): boolean {
  return untilKnown === true && tried.some(({ choice }) => choice.short.length === 0);
}

function slots({ boards }: Job): { readonly cost: number; readonly copies: number }[] {
  return boards.map(({ cost, quantity }) => ({ cost, copies: quantity }));
}

/** The plans with one part made in another way, the largest parts first. */
function neighbours({ ways, open }: Making, plan: MakingPlan): MakingPlan[] {
  return open.flatMap((part) =>
    [...ways[part]!.keys()]
      .filter((way) => way !== plan[part])
      .map((way) => plan.map((at, index) => (index === part ? way : at))),
  );
}

/** Plans that differ in more than which of alike parts is made in which way; the first of each. */
function distinct({ job }: Making, plans: readonly MakingPlan[]): MakingPlan[] {
  const alike = alikeParts(job.parts);
  const keyOf = (plan: MakingPlan): string =>
    alike.map((parts) => parts.map((part) => plan[part]!).sort((a, b) => a - b)).join(';');
  const first = new Map<string, MakingPlan>();
  for (const plan of plans) if (!first.has(keyOf(plan))) first.set(keyOf(plan), plan);
  return [...first.values()];
}

/** Whether the layout costs no more, or is worth no less, than any other may, to a share of it. */
function isMet({ shop }: Job, { choice }: Tried, bound: number | null, share = 1e-7): boolean {
  if (bound === null || (shop.goal === 'least cost' && choice.short.length > 0)) return false;
  return Math.abs(bound - choice.proof.value) <= share * (1 + Math.abs(choice.proof.value));
}

function makingOf(job: Job): Making {
  const ways = job.parts.map((part) => waysToMake(job, part));
  const size = (index: number): number => job.parts[index]!.length * job.parts[index]!.width;
  const open = ways.flatMap((list, index) => (list.length > 1 ? [index] : []));
  return { job, ways, open: open.sort((a, b) => size(b) - size(a)) };
}

/** The best first layout of a few plans: all parts whole, all of two strips, all of as many as may be. */
function* started(making: Making, options: SolveOptions): Generator<Progress<Choice>, Tried, void> {
  const { job, ways } = making;
  const stopped = (): boolean => options.stop?.() === true;
  const tried: Tried[] = [];
  for (const start of startsOf(ways)) {
    let next: MakingPlan | null = start;
    while (next !== null && (tried.length === 0 || !stopped())) {
      const steps = solvePlan(making, next, { ...options, effort: 0 });
      const one: Tried = yield* within(steps, soFarOf(job, tried));
      tried.push(one);
      if (isAnswered(options, [one])) return one;
      next = laterWhereShort(ways, one);
    }
  }
  return bestOf(job, tried);
}

/** Every part of as near as may be to one, to two and to the most strips; each such plan once. */
function startsOf(ways: readonly (readonly WayToMake[])[]): MakingPlan[] {
  const most = Math.max(...ways.flat().map(({ strips }) => strips));
  const plans = [1, 2, most].map((wanted) =>
    ways.map((list) => {
      const index = list.findIndex(({ strips }) => strips >= wanted);
      return index < 0 ? list.length - 1 : index;
    }),
  );
  return [...new Map(plans.map((plan) => [plan.join(), plan])).values()];
}

/** The plan with the next way for each part that is short; null where there is none left. */
function laterWhereShort(
  ways: readonly (readonly WayToMake[])[],
  { plan, choice }: Tried,
): MakingPlan | null {
  const isShort = (part: number): boolean => choice.short.some((short) => short.part === part);
  const next = plan.map((at, part) => (isShort(part) && at + 1 < ways[part]!.length ? at + 1 : at));
  return next.some((at, part) => at !== plan[part]) ? next : null;
}

function* everyPlan(ways: readonly (readonly WayToMake[])[]): Generator<MakingPlan> {
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

/** The bound of all plans together: of those that may lay out everything; Infinity where it is proven that none may. */
function boundOfAll(job: Job, tried: readonly Tried[]): number {
  const bounds = tried.map(({ choice }) => choice.proof.bound);
  if (job.shop.goal === 'most value') return Math.max(...bounds);
  const rivals = tried.filter(({ isRuledOut }) => !isRuledOut);
  return Math.min(...rivals.map(({ leastWhole }) => leastWhole));
}

/** The choice with the bound of all plans; null: the one that always holds. */
export function withBound(job: Job, choice: Choice, bound: number | null, cannotHold = false): Choice {
  const { value } = choice.proof;
  const isMost = job.shop.goal === 'most value';
  const all = job.parts.reduce((sum, part) => sum + part.quantity * valueOf(part), 0);
  const isKnown = bound !== null && (isMost || choice.short.length === 0);
  // Nothing known: an answer that costs nothing is not proven by that, for other parts might be laid out instead.
  const least = value === 0 ? -1 : 0;
  const limit = isMost ? Math.max(value, isKnown ? bound : all) : Math.min(value, isKnown ? bound : least);
  const apart = Math.abs(value - limit);
  const proven = apart <= 1e-7 * (1 + Math.abs(value));
  const gap = proven ? 0 : value === 0 ? 1 : apart / Math.abs(value);
  const proof: Proof = { value, bound: proven ? value : limit, gap, proven };
  const { patterns, short } = choice;
  return { patterns, short, proof, ...lackOf(job, choice, bound, cannotHold) };
}

/** What is known of layouts that have all parts, where this one has not. */
function lackOf(
  { shop }: Job,
  { short }: Choice,
  bound: number | null,
  cannotHold: boolean,
): Pick<Choice, 'leastWhole' | 'cannotHold'> {
  if (short.length === 0 || shop.goal === 'most value') return {};
  return { ...(bound === null ? {} : { leastWhole: bound }), ...(cannotHold ? { cannotHold } : {}) };
}
