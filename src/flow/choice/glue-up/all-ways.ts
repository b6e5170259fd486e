import { mostSlots, searchBoards } from '../boards/search-boards.ts';
import { areaBound } from '../bound.ts';
import { buildInstance } from '../build-instance.ts';
import type { Choice } from '../choice.ts';
import { workFor } from '../work.ts';
import { wholeRest } from '../generate.ts';
import { type Alternative, type Instance, hasCosts, slotsOf } from '../instance.ts';
import { valueOf } from '../kinds.ts';
import { type NodeAnswer, solveNode } from '../node.ts';
import { withThread } from '../other-thread.ts';
import { type Plan, withoutSurplus, planOf } from '../plan.ts';
import { type Progress, type SolveOptions, retold } from '../progress.ts';
import { roundedBound } from '../round-bound.ts';
import { emptyStore } from '../store.ts';
import { toChoice } from '../to-choice.ts';
import { cheapestChoice, keptNear } from '../true-cost.ts';
import { type JointJob, jointJobOf, ofOwnParts, planOfMix } from './joint-job.ts';
import type { Making, MakingPlan } from './making-plan.ts';

/** What is learnt of all ways to make the parts at once. */
export interface AllWays {
  /** On every layout, however its parts are made; null where nothing is known. */
  readonly bound: number | null;
  /** The plan nearest to the mix of ways that the bound comes from; null where there is none. */
  readonly plan: MakingPlan | null;
  /** The best layout met that costs less than the cutoff. */
  readonly choice: Choice | null;
}

/** Below this effort no branching where offcuts earn credit: what is not known of the credit is then most of the gap. */
const effortToBranch = 0.08;

const doing = 'weighing ways to make the parts';

/** How it stands. */
interface Standing {
  bound: number;
  root: NodeAnswer | null;
  /** The best plans met that lay out all parts, cheapest first. */
  near: readonly Plan[];
}

/**
 * A bound on every layout, in whichever ways its parts are made, by one master: a kind for each way, of which so many
 * strips make a copy (see Alternative). Any layout is a point of that program, and what its prices say of the boards
 * bounds as for any other job. Where boards are few, sets of boards are then sought as for a job of one plan
 * (see searchBoards); layouts met on the way are kept.
 * @param cutoff what the best layout known costs, by the solver's measure; Infinity where none lays out everything
 */
export function* searchAllWays(
  making: Making,
  cutoff: number,
  options: SolveOptions,
): Generator<Progress, AllWays, void> {
  const { job } = making;
  const joint = jointJobOf(making);
  const instance = instanceOf(joint, options);
  // The root may be ended before its prices bound anything.
  const least = job.shop.goal === 'most value' ? 0 : areaBound(instance);
  const standing: Standing = { bound: least, root: null, near: [] };
  const until = instance.meter.spent + workFor(instance, options.effort);
  const branches = options.effort >= effortToBranch || job.shop.offcutCredit === 0;
  const steps = search(instance, { cutoff, until, branches }, standing);
  for (let step = steps.next(); step.done !== true && options.stop?.() !== true; step = steps.next()) {
    const bound = job.shop.goal === 'most value' || standing.root === null ? null : standing.bound;
    yield { doing, value: null, bound };
  }
  const { bound, root } = standing;
  if (root === null) return { bound: null, plan: null, choice: null };
  const all = job.parts.reduce((sum, part) => sum + part.quantity * valueOf(part), 0);
  return {
    bound: job.shop.goal === 'most value' ? all - bound : bound,
    plan: planOfMix(making, joint, mixOf(instance, joint, root)),
    choice: yield* bestChoice(making, joint, instance, standing, options),
  };
}

/** The cheapest layout met; null where none was. */
function* bestChoice(
  { job }: Making,
  joint: JointJob,
  instance: Instance,
  { near, bound }: Standing,
  options: SolveOptions,
): Generator<Progress, Choice | null, void> {
  const best = near[0];
  if (best === undefined) return null;
  const choiceOf = (plan: Plan): Choice => ofOwnParts(job, joint, toChoice(joint.job, instance, plan, bound));
  const steps = cheapestChoice(job, instance, { best, near }, options, choiceOf);
  return yield* retold(steps, () => ({ doing, value: null, bound: null }));
}

/** The joint job as the solver sees it. */
function instanceOf({ job, alike }: JointJob, options: SolveOptions): Instance {
  const instance = withThread(job, buildInstance(job), options.thread);
  const kindOf = (part: number): number =>
    instance.kinds.findIndex(({ members }) => members[0]!.part === part);
  const alternatives = alike.flatMap(({ copies, ways, first }): Alternative[] =>
    ways.length === 1 || copies === 0
      ? []
      : [{ copies, ways: ways.map(({ strips }, w) => ({ kind: kindOf(first + w), strips })) }],
  );
  return { ...instance, alternatives };
}

interface SearchLimits {
  readonly cutoff: number;
  /** Meter reading at which it ends. */
  readonly until: number;
  /** Whether sets of boards that the relaxation cannot refute are branched on. */
  readonly branches: boolean;
}

function* search(
  instance: Instance,
  { cutoff, until, branches }: SearchLimits,
  standing: Standing,
): Generator<void, void, void> {
  const store = emptyStore();
  const whole = wholeRest(instance);
  // Leaving everything out is a plan too, and dearer than any that leaves nothing out.
  const dearest = Math.min(cutoff, planOf(instance, []).objective);
  const raise = (bound: number): void => {
    standing.bound = Math.max(standing.bound, roundedBound(instance, bound, dearest));
  };
  const limits = { rounds: 400, enough: dearest, until, capped: false, counts: true };
  standing.root = yield* solveNode(instance, whole, store, [], limits);
  raise(standing.root.bound);
  if (slotsOf(instance) > mostSlots || !hasCosts(instance)) return;
  const learnt = { cuts: [...standing.root.cuts], refuted: [] };
  const workPerSet = branches ? 0.5 * (until - instance.meter.spent) : 0;
  const sets = { until, workPerSet, dives: false };
  yield* searchBoards(instance, store, learnt, standing.bound, sets, {
    offer: (given) => {
      standing.near = keptNear(standing.near, planOf(instance, withoutSurplus(instance, given.columns)));
    },
    cutoff: () => Math.min(standing.near[0]?.objective ?? Infinity, dearest),
    raise,
  });
}

/** By alike copies, how many the root's master makes in each way. */
function mixOf({ alternatives = [] }: Instance, { alike }: JointJob, { answer }: NodeAnswer): number[][] {
  let at = 0;
  let next = 0;
  return alike.map(({ copies, ways }) => {
    if (ways.length === 1 || copies === 0) return ways.map(() => copies);
    const made = Array.from(answer.made.subarray(at, at + alternatives[next]!.ways.length));
    at += ways.length;
    next += 1;
    return made;
  });
}
