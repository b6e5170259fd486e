import { random } from '../../base/random/random.ts';
import type { Job } from '../stock/job.ts';
import { mostSlots, searchBoards } from './boards/search-boards.ts';
import type { Choice } from './choice.ts';
import { areaBound } from './bound.ts';
import { type SearchNode, branchAndPrice } from './branch.ts';
import { buildInstance } from './build-instance.ts';
import { firstByPrices, isByPrices, stagesByPrices } from './by-prices.ts';
import { dive } from './dive.ts';
import { layByExchange, movesPerGroup } from './exchange/lay-by-exchange.ts';
import { wholeRest } from './generate.ts';
import { firstLayout } from './first-layout.ts';
import { areaWorth } from './greedy.ts';
import { type ImproveLimits, improve } from './improve.ts';
import type { Instance } from './instance.ts';
import { solveNode } from './node.ts';
import { withThread } from './other-thread.ts';
import {
  type Solving,
  type Stage,
  type Standing,
  cutoffOf,
  isMet,
  offerTo,
  raiseOf,
  say,
} from './standing.ts';
import { emptyStore } from './store.ts';
import { fillOneBoard, isOneBoard } from './one-board.ts';
import { pickColumns } from './pick/pick-columns.ts';
import { type Plan, planOf } from './plan.ts';
import { type Progress, type Solve, type SolveOptions, retold } from './progress.ts';
import { cutSticks } from './sticks/cut-sticks.ts';
import { isSticks, levelled } from './sticks/to-sticks.ts';
import { layOnLess } from './lay-on-less.ts';
import { layOutTightly } from './tight/lay-out-tightly.ts';
import { toChoice } from './to-choice.ts';
import { isFew, isRepeated, slotsOf, workFor } from './work.ts';
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

/** Neighbourhood search up to a share of the budget. */
function* improveUpTo(
  solving: Solving,
  share: number,
  tries: number,
  every: Pick<ImproveLimits, 'diveEvery' | 'solveEvery'>,
): Generator<void, void, void> {
  const { instance, store, standing, stream, budget } = solving;
  const limits = { tries, until: share * budget, ...every };
  yield* improve(instance, standing.best, store, stream, limits, offerTo(standing));
}

/** Nodes of one search for the best choice among known patterns, and its share of the work. */
const mostPicks = 2000;
const shareOfPick = 0.04;

/** Neighbourhood search that takes a share of the budget from where it begins. */
function* improveFor(solving: Solving, share: number): Generator<void, void, void> {
  const from = solving.instance.meter.spent / solving.budget;
  yield* improveUpTo(solving, Math.min(1, from + share), Infinity, often);
}

/** Rounds of exchange that take a share of the budget. */
function* exchangeFor(solving: Solving, share: number): Generator<void, void, void> {
  const { instance, budget } = solving;
  const until = Math.min(budget, instance.meter.spent + share * budget);
  yield* layByExchange({ ...solving, budget: until }, movesPerGroup.usual);
}

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
  return firstLayout(solving, areaWorth(instance), { fine: isFew(instance), fromPool: false });
}

/** Relative gap at which the root of a large job is left: the rest of the work goes into layouts. */
const closeEnough = 8e-3;

/** Column generation at the root: the bound of all capped patterns mixed freely, and the patterns it takes. */
function* root(solving: Solving, share: number, close: number, counts: boolean): Generator<void, void, void> {
  const { instance, store, standing, budget } = solving;
  const limits = {
    rounds: 400,
    enough: Infinity,
    close,
    until: share * budget,
    capped: true,
    counts,
  };
  const { bound, cuts } = yield* solveNode(instance, wholeRest(instance), store, [], limits);
  solving.learnt.cuts.push(...cuts);
  raiseOf(instance, standing)(bound);
}

function* firstDive(
  { instance, store, standing, budget }: Solving,
  share: number,
): Generator<void, void, void> {
  const limits = { first: 2, later: 6, until: share * budget, fine: false };
  offerTo(standing)(planOf(instance, yield* dive(instance, wholeRest(instance), store.pool, limits)));
}

function* prove({ instance, store, standing, budget }: Solving, share: number): Generator<void, void, void> {
  const start: SearchNode = { copies: wholeRest(instance).copies, rows: [], bound: standing.bound, depth: 0 };
  yield* branchAndPrice(instance, wholeRest(instance), store, start, share * budget, {
    offer: offerTo(standing),
    cutoff: cutoffOf(standing),
    raise: raiseOf(instance, standing),
    *after(node) {
      if (node.depth % 3 !== 1) return;
      const rest = { demand: wholeRest(instance).demand, copies: node.copies.slice() };
      offerTo(standing)(
        planOf(
          instance,
          yield* dive(instance, rest, store.pool, { first: 1, later: 3, until: budget, fine: false }),
        ),
      );
    },
  });
}

/** The best choice among the patterns met so far. */
function pick({ instance, store, standing, budget }: Solving): Generator<void, void, void> {
  const limits = { work: shareOfPick * budget, until: budget, mostNodes: mostPicks };
  return pickColumns(instance, store.pool.columns, cutoffOf(standing), offerTo(standing), limits);
}

/** The cheapest set of boards, where there are few enough of them. */
function* proveBoards(
  { instance, store, standing, budget, learnt }: Solving,
  share: number,
  shareOfSet: number,
): Generator<void, void, void> {
  if (slotsOf(instance) > mostSlots || instance.groups.every(({ cost }) => cost === 0)) return;
  const limits = { until: share * budget, workPerSet: shareOfSet * budget, dives: true };
  yield* searchBoards(instance, store, learnt, standing.bound, limits, {
    offer: offerTo(standing),
    cutoff: cutoffOf(standing),
    raise: raiseOf(instance, standing),
  });
}

/** Share of the work, on top of it, for layouts that waste next to nothing. */
const shareOfTight = 0.03;

/** Layouts on boards that cost less, for a share of the budget. */
function* layOnLessFor(solving: Solving, share: number): Generator<void, void, void> {
  const { instance, budget } = solving;
  yield* layOnLess(solving, Math.min(budget, instance.meter.spent + share * budget));
}

/**
 * Stages of a job of few kinds of boards and many copies of each: many layouts cost the same, so that those of a set of
 * boards are sought rather than those of another cost.
 */
function stagesOfRepeated(solving: Solving): readonly Stage[] {
  return [
    ['trying fewer boards', layOnLessFor(solving, 0.1)],
    ['finding patterns', root(solving, 0.45, 0, true)],
    ['choosing boards', firstDive(solving, 0.55)],
    ['choosing patterns', pick(solving)],
    ['trying other layouts', exchangeFor(solving, 0.1)],
    ['trying fewer boards', layOnLessFor(solving, 0.15)],
    ['choosing patterns', pick(solving)],
    ['proving', proveBoards(solving, 0.7, 0.1)],
    ['trying other layouts', exchangeFor(solving, 0.1)],
    ['trying fewer boards', layOnLessFor(solving, 0.1)],
    ['proving', proveBoards(solving, 0.9, 0.3)],
    ['proving', prove(solving, 0.9)],
    ['trying other layouts', exchangeFor(solving, 0.05)],
    ['trying fewer boards', layOnLessFor(solving, 1)],
  ];
}

/** The stages of a solve after its first layout, in order. Without effort only those that make it whole and bound it. */
function stagesOf(solving: Solving, effort: number): readonly Stage[] {
  if (effort > 0 && isRepeated(solving.instance)) return stagesOfRepeated(solving);
  const slots = slotsOf(solving.instance);
  if (effort > 0 && slots > mostSlots) return stagesOfLarge(solving);
  const base: Stage[] = [
    ['finding patterns', root(solving, 0.45, 0, isFew(solving.instance))],
    ['choosing boards', firstDive(solving, 0.55)],
  ];
  if (effort <= 0) return base;
  if (isFew(solving.instance)) {
    return [
      ...base,
      ['choosing patterns', pick(solving)],
      ['proving', proveBoards(solving, 0.5, 0.3)],
      ['trying other layouts', improveUpTo(solving, 0.8, 8, neverSolve)],
      ['choosing patterns', pick(solving)],
      ['proving', proveBoards(solving, 0.9, 0.3)],
      ['proving', prove(solving, 0.9)],
      ['improving', improveUpTo(solving, 1, Infinity, neverSolve)],
    ];
  }
  return [
    ...base,
    ['choosing patterns', pick(solving)],
    ['trying other layouts', exchangeFor(solving, 0.12)],
    ['choosing patterns', pick(solving)],
    ['proving', proveBoards(solving, 0.7, 0.08)],
    ['trying other layouts', improveFor(solving, 0.06)],
    ['choosing patterns', pick(solving)],
    ['proving', proveBoards(solving, 0.97, 0.3)],
    ['proving', prove(solving, 0.97)],
    ['improving', improveUpTo(solving, 1, Infinity, often)],
  ];
}

/** Of a large job a proof is out of reach: its root is solved nearly, and its layout improved piece by piece. */
function stagesOfLarge(solving: Solving): readonly Stage[] {
  return [
    ['finding patterns', root(solving, 0.75, closeEnough, false)],
    ['choosing boards', firstDive(solving, 0.8)],
    ['improving', improveUpTo(solving, 1, Infinity, { diveEvery: Infinity, solveEvery: 1 })],
  ];
}

const often = { diveEvery: Infinity, solveEvery: 6 };
const neverSolve = { diveEvery: 3, solveEvery: Infinity };

/** The choice that the solve ends with. */
function answered(job: Job, instance: Instance, standing: Standing, options: SolveOptions): Solve {
  const choiceOf = (plan: Plan): Choice => toChoice(job, instance, plan, standing.bound);
  const steps = cheapestChoice(job, instance, standing, options, choiceOf);
  return retold(steps, () => say('comparing offcuts', standing));
}

/**
 * Chooses boards and patterns for a job: a layout at once, then column generation to its bound, a dive, and branch
 * and price with a neighbourhood search until the bound is met or the effort is spent (DESIGN, section 9).
 * Deterministic in job, seed and effort; `stop` ends it early with the best so far.
 */
export function* choose(job: Job, options: SolveOptions): Solve {
  const built = withThread(job, buildInstance(job), options.thread);
  const instance = isSticks(built) ? levelled(built) : built;
  const standing: Standing = {
    best: planOf(instance, []),
    bound: job.shop.goal === 'most value' ? 0 : areaBound(instance),
    near: [],
  };
  const stopped = (): boolean => options.stop?.() === true;
  const done = (): boolean => stopped() || isMet(standing);
  const store = emptyStore();
  const solving = {
    instance,
    store,
    standing,
    stream: random(options.seed),
    learnt: { cuts: [], refuted: [] },
    budget: Infinity,
  };
  const isMany = isByPrices(instance);
  const work = workFor(instance, options.effort);
  if (isSticks(instance)) {
    const sticks = cutSticks(instance, standing, { seed: options.seed, until: instance.meter.spent + work });
    yield* told(sticks, standing, 'cutting lengths', done);
    if (!standing.best.missing.some((count) => count > 0)) {
      return yield* answered(job, instance, standing, options);
    }
  }
  if (isOneBoard(job, instance)) {
    const effort = { seed: options.seed, work: Math.max(0.01, options.effort) * workForOneBoard };
    yield* told(fillOneBoard(instance, standing, effort), standing, 'filling the board', done);
    return toChoice(job, instance, standing.best, standing.bound);
  }
  // The first layout is finished whatever happens: without it there is nothing to show.
  const prices = new Float64Array(instance.kinds.length);
  const opening = isMany ? firstByPrices(solving, prices) : first(solving);
  yield* told(opening, standing, 'first layout', () => false);
  const tight = layOutTightly(
    instance,
    standing.bound,
    shareOfTight * work,
    cutoffOf(standing),
    offerTo(standing),
  );
  if (options.effort > 0 && !done()) yield* told(tight, standing, 'filling boards', done);
  const given = {
    ...solving,
    instance: withinMeans(instance, standing),
    budget: instance.meter.spent + work,
  };
  const stages = isMany ? stagesByPrices(given, prices) : stagesOf(given, options.effort);
  for (const [doing, stage] of stages) {
    if (!done()) yield* told(stage, standing, doing, done);
  }
  return yield* answered(job, instance, standing, options);
}
