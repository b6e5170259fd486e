import { type Random, random } from '../../base/random/random.ts';
import type { Job } from '../stock/job.ts';
import { areaBound } from './bound.ts';
import { type SearchNode, branchAndPrice } from './branch.ts';
import { buildInstance } from './build-instance.ts';
import { dive } from './dive.ts';
import { emptyPool, wholeRest } from './generate.ts';
import { areaWorth, greedy } from './greedy.ts';
import { improve } from './improve.ts';
import type { Instance } from './instance.ts';
import { type Store, solveNode } from './node.ts';
import { type Plan, planOf } from './plan.ts';
import type { Progress, Solve, SolveOptions } from './progress.ts';
import { roundedBound } from './round-bound.ts';
import { toChoice } from './to-choice.ts';

/** Share of the objective below which a gap is rounding. */
const gapTolerance = 1e-7;

/** The best plan and bound so far; one per solve, passed on to every step of it. */
interface Standing {
  best: Plan;
  bound: number;
}

function slackOf(value: number): number {
  return gapTolerance * (1 + Math.abs(value));
}

function isMet({ best, bound }: Standing): boolean {
  return best.objective - bound <= slackOf(best.objective);
}

/** Runs a step of the solve, saying how it stands after each of its yields; null when it was ended early. */
function* told<T>(
  steps: Generator<void, T, void>,
  standing: Standing,
  doing: string,
  done: () => boolean,
): Generator<Progress, T | null, void> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return step.value;
    if (done()) return null;
    yield { doing, value: standing.best.objective, bound: standing.bound };
  }
}

/** Work that an effort of 1 allows: a base, and more for every piece. One unit is about 10 ns. */
const workPerSolve = 2e8;
const workPerPiece = 1e7;

interface Solving {
  readonly instance: Instance;
  readonly store: Store;
  readonly standing: Standing;
  readonly stream: Random;
  /** Work the whole solve may do. */
  readonly budget: number;
}

function offerTo(standing: Standing): (plan: Plan) => boolean {
  return (plan) => {
    if (plan.objective < standing.best.objective) standing.best = plan;
    return isMet(standing);
  };
}

/** Neighbourhood search up to a share of the budget. */
function* improveUpTo(
  solving: Solving,
  share: number,
  tries: number,
  diveEvery: number,
): Generator<void, void, void> {
  const { instance, store, standing, stream, budget } = solving;
  const limits = { tries, until: share * budget, diveEvery };
  yield* improve(instance, standing.best, store.pool, stream, limits, offerTo(standing));
}

/** Column generation at the root: the bound of all capped patterns mixed freely, and the patterns it takes. */
function* root({ instance, store, standing, budget }: Solving): Generator<void, void, void> {
  const limits = { rounds: 200, enough: Infinity, until: 0.5 * budget, capped: true };
  const { bound } = yield* solveNode(instance, wholeRest(instance), store, [], limits);
  standing.bound = Math.max(standing.bound, roundedBound(instance, bound, standing.best.objective));
}

function* firstDive({ instance, store, standing }: Solving): Generator<void, void, void> {
  const columns = yield* dive(instance, wholeRest(instance), store.pool, { first: 2, later: 6 });
  offerTo(standing)(planOf(instance, columns));
}

function* prove({ instance, store, standing, budget }: Solving): Generator<void, void, void> {
  const start: SearchNode = { copies: wholeRest(instance).copies, rows: [], bound: standing.bound, depth: 0 };
  yield* branchAndPrice(instance, wholeRest(instance), store, start, 0.9 * budget, {
    offer: offerTo(standing),
    cutoff: () => standing.best.objective - slackOf(standing.best.objective),
    raise: (bound) => {
      const rounded = roundedBound(instance, bound, standing.best.objective);
      standing.bound = Math.max(standing.bound, rounded);
    },
    *after(node) {
      if (node.depth % 3 !== 1) return;
      const rest = { demand: wholeRest(instance).demand, copies: node.copies.slice() };
      offerTo(standing)(planOf(instance, yield* dive(instance, rest, store.pool, { first: 1, later: 3 })));
    },
  });
}

/**
 * Chooses boards and patterns for a job: a layout at once, then column generation to its bound, a dive, and branch
 * and price with a neighbourhood search until the bound is met or the effort is spent (DESIGN, section 9).
 * Deterministic in job, seed and effort; `stop` ends it early with the best so far.
 */
export function* choose(job: Job, options: SolveOptions): Solve {
  const instance = buildInstance(job, {
    patternX: 2000,
    patternY: 300,
    boundX: 400,
    boundY: 64,
    mostStarts: 16,
  });
  const store: Store = { pool: emptyPool(), relaxed: emptyPool(), caps: new Map() };
  const standing: Standing = {
    best: planOf(instance, greedy(instance, wholeRest(instance), store.pool, areaWorth(instance))),
    bound: job.shop.goal === 'most value' ? 0 : areaBound(instance),
  };
  const pieces = instance.kinds.reduce((sum, kind) => sum + kind.demand, 0);
  const budget = instance.meter.spent + options.effort * (workPerSolve + pieces * workPerPiece);
  const solving: Solving = { instance, store, standing, stream: random(options.seed), budget };
  const stages: readonly (readonly [string, () => Generator<void, void, void>])[] = [
    ['trying other first layouts', () => improveUpTo(solving, 0.15, 8, Infinity)],
    ['finding patterns', () => root(solving)],
    ['choosing boards', () => firstDive(solving)],
    ['improving', () => improveUpTo(solving, 0.6, 9, 3)],
    ['proving', () => prove(solving)],
    ['improving', () => improveUpTo(solving, 1, Infinity, 3)],
  ];
  const done = (): boolean => options.stop?.() === true || isMet(standing) || options.effort <= 0;
  yield { doing: 'first layout', value: standing.best.objective, bound: standing.bound };
  for (const [doing, stage] of stages) {
    if (!done()) yield* told(stage(), standing, doing, done);
  }
  return toChoice(job, instance, standing.best, standing.bound);
}
