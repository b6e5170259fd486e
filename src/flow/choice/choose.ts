import type { Job } from '../stock/job.ts';
import type { Choice } from './choice.ts';
import { isDeep } from './any-stage-pricer.ts';
import { firstLayouts, hasWays } from './among-ways.ts';
import { areaBound } from './bound.ts';
import { mostSlots } from './boards/search-boards.ts';
import { firstByPrices, isByPrices, stagesByPrices } from './by-prices.ts';
import { firstLayout } from './first-layout.ts';
import { areaWorth } from './greedy.ts';
import { type JointJob, jointInstance, jointJobOf } from './glue-up/joint-job.ts';
import { type Instance, slotsOf } from './instance.ts';
import { withThread } from './other-thread.ts';
import {
  type Solving,
  type Standing,
  cutoffOf,
  isKnownWhole,
  isMet,
  offerTo,
  openSolving,
  say,
} from './standing.ts';
import { fillOneBoard, isOneBoard } from './one-board.ts';
import { addToPool, emptyPool } from './generate.ts';
import { type Plan, planOf } from './plan.ts';
import { type Progress, type Solve, type SolveOptions, retold, within } from './progress.ts';
import { cutSticks } from './sticks/cut-sticks.ts';
import { isSticks, levelled } from './sticks/to-sticks.ts';
import { rootAmongWays, stagesOf } from './stages.ts';
import { layOutTightly } from './tight/lay-out-tightly.ts';
import { toChoice } from './to-choice.ts';
import { drawnCopies, roundedCopies, withWaysFixed } from './ways.ts';
import { isFew, workFor } from './work.ts';
import { cheapestChoice } from './true-cost.ts';

/** Runs a step of the solve, saying how it stands after each of its yields; ends early when `done`. */
function* told(
  steps: Generator<void, void, void>,
  standing: Standing,
  doing: string,
  done: () => boolean,
): Generator<Progress, void, void> {
  for (let step = steps.next(); step.done !== true && !done(); step = steps.next())
    yield say(doing, standing);
}

/** Work of one board under `most value`, in the general engine's steps. */
const workForOneBoard = 4e9;

/** The instance with no more copies of a board than a layout cheaper than the best can pay for. */
function withinMeans(instance: Instance, { best }: Standing): Instance {
  if (best.missing.some((count) => count > 0)) return instance;
  const groups = instance.groups.map((group) => {
    const most = group.cost > 0 ? Math.floor(best.objective / group.cost) : Infinity;
    return most < group.copies ? { ...group, copies: most } : group;
  });
  return { ...instance, groups };
}

function first(solving: Solving): Generator<void, void, void> {
  const { instance } = solving;
  if (hasWays(instance)) return firstLayouts(solving);
  return firstLayout(solving, areaWorth(instance), { fine: isFew(instance), fromPool: false });
}

/** Share of the work, on top of it, for layouts that waste next to nothing. */
const shareOfTight = 0.03;

/** Whether a solve is to end: told to, its bound met, or all known that was asked. */
function doneWhen({ stop, untilKnown }: SolveOptions, instance: Instance, standing: Standing): () => boolean {
  return () =>
    stop?.() === true || isMet(standing) || (untilKnown === true && isKnownWhole(instance, standing));
}

/** A layout at once, where there is none yet, then better ones and bounds until `done` or the work is spent. */
function* sought(solving: Solving, effort: number, done: () => boolean): Generator<Progress, void, void> {
  const { instance, standing } = solving;
  const isMany = isByPrices(instance) && !hasWays(instance);
  const work = workFor(instance, effort);
  const prices = new Float64Array(instance.kinds.length);
  // The first layout is finished whatever happens: without it there is nothing to show.
  if (standing.best.columns.length === 0) {
    const opening = isMany ? firstByPrices(solving, prices) : first(solving);
    yield* told(opening, standing, 'first layout', () => false);
  }
  if (hasWays(instance) && isLargeAmongWays(instance)) {
    yield* soughtInTurn({ ...solving, budget: instance.meter.spent + work }, effort, done);
    return;
  }
  const tight = layOutTightly(
    instance,
    standing.bound,
    shareOfTight * work,
    cutoffOf(standing),
    offerTo(standing),
  );
  if (effort > 0 && !done() && !hasWays(instance)) yield* told(tight, standing, 'filling boards', done);
  const given = {
    ...solving,
    instance: withinMeans(instance, standing),
    budget: instance.meter.spent + work,
  };
  const stages = isMany ? stagesByPrices(given, prices) : stagesOf(given, effort);
  for (const [doing, stage] of stages) {
    if (!done()) yield* told(stage, standing, doing, done);
  }
}

/** Whether a job is too large for its ways to be searched with its boards: ways are then settled by the root's master. */
function isLargeAmongWays(instance: Instance): boolean {
  return isByPrices(instance) || slotsOf(instance) > mostSlots;
}

/** The root's bound, then whole solves with the copies made about as its master makes them. */
function* soughtInTurn(
  solving: Solving,
  effort: number,
  done: () => boolean,
): Generator<Progress, void, void> {
  const { instance, standing, store, mix, stream } = solving;
  yield* told(rootAmongWays(solving, effort > 0 ? 0.3 : 0.15), standing, 'finding patterns', done);
  const turns = effort > 0 ? solvesInTurn : 1;
  for (let turn = 0; turn < turns && !done() && mix.shares !== null; turn += 1) {
    const made = turn === 0 ? roundedCopies(instance, mix.shares) : drawnCopies(instance, mix.shares, stream);
    const fixed = withWaysFixed(instance, made);
    const own: Standing = { best: planOf(fixed, []), bound: standing.bound, near: [] };
    const there = {
      ...solving,
      instance: fixed,
      standing: own,
      store: { ...store, pool: emptyPool() },
      mix: { shares: null },
    };
    for (const { doing } of sought(there, effort / turns, () => done())) {
      if (own.best.objective < standing.best.objective) offerTo(standing)(planOf(instance, own.best.columns));
      yield say(doing, standing);
    }
    offerTo(standing)(planOf(instance, own.best.columns));
  }
}

/** Whole solves of a large job, each with its copies made in other ways. */
const solvesInTurn = 2;

/** Looks for a layout in four stages, of a job that may have more: what is found can be cut there as well, and is found sooner. */
function* soughtInFour(
  job: Job,
  { instance, standing, store }: Solving,
  options: SolveOptions,
): Generator<Progress, void, void> {
  const four = jointInstance(jointJobOf({ ...job, shop: { ...job.shop, stages: 4 } }));
  const here: Standing = { best: planOf(four, []), bound: standing.bound, near: [] };
  const solving = openSolving(four, here, options.seed);
  const done = doneWhen(options, four, here);
  const offer = offerTo(standing);
  for (const { doing } of sought(solving, options.effort, done)) {
    if (here.best.objective < standing.best.objective) offer(planOf(instance, here.best.columns));
    yield say(doing, standing);
  }
  for (const column of solving.store.pool.columns) addToPool(store.pool, column);
  for (const plan of here.near) offer(planOf(instance, plan.columns));
  offer(planOf(instance, here.best.columns));
}

/** The choice that the solve ends with. */
function answered(
  job: Job,
  joint: JointJob,
  { instance, standing }: Solving,
  options: SolveOptions,
): Generator<Progress, Choice, void> {
  const choiceOf = (plan: Plan): Choice => toChoice(job, joint, instance, plan, standing.bound);
  const steps = cheapestChoice(job, instance, standing, options, choiceOf);
  return retold(steps, () => say('comparing offcuts', standing));
}

/**
 * Chooses boards and patterns for a job: a layout at once, then column generation to its bound, a dive, and branch
 * and price with a neighbourhood search until the bound is met or the effort is spent (DESIGN, section 9).
 * Deterministic in job, seed and effort; `stop` ends it early with the best so far.
 */
export function* choose(job: Job, options: SolveOptions): Solve {
  const joint = jointJobOf(job);
  const built = withThread(job, jointInstance(joint), options.thread);
  const instance = isSticks(built) ? levelled(built) : built;
  const standing: Standing = {
    best: planOf(instance, []),
    bound: job.shop.goal === 'most value' ? 0 : areaBound(instance),
    near: [],
  };
  const soFar = (): Choice | null =>
    standing.best.columns.length === 0
      ? null
      : toChoice(job, joint, instance, standing.best, standing.bound, true);
  return yield* within(bettered(job, joint, instance, standing, options), soFar);
}

/** The solve of an instance, from how it stands on. */
function* bettered(
  job: Job,
  joint: JointJob,
  instance: Instance,
  standing: Standing,
  options: SolveOptions,
): Generator<Progress, Choice, void> {
  const done = doneWhen(options, instance, standing);
  const solving = openSolving(instance, standing, options.seed);
  if (isSticks(instance)) {
    const work = workFor(instance, options.effort);
    const sticks = cutSticks(instance, standing, { seed: options.seed, until: instance.meter.spent + work });
    yield* told(sticks, standing, 'cutting lengths', done);
    if (!standing.best.missing.some((count) => count > 0)) {
      return yield* answered(job, joint, solving, options);
    }
  }
  if (isOneBoard(job, instance) && !hasWays(instance)) {
    const effort = { seed: options.seed, work: Math.max(0.01, options.effort) * workForOneBoard };
    yield* told(fillOneBoard(instance, standing, effort), standing, 'filling the board', done);
    return toChoice(job, joint, instance, standing.best, standing.bound);
  }
  // With very many boards all time goes to prices, and both engines price those.
  if (isDeep(job.shop.stages) && !isByPrices(instance)) yield* soughtInFour(job, solving, options);
  yield* sought(solving, options.effort, done);
  return yield* answered(job, joint, solving, options);
}
