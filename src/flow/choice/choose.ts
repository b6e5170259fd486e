import { random } from '../../base/random/random.ts';
import type { Job } from '../stock/job.ts';
import { areaBound } from './bound.ts';
import { type SearchNode, branchAndPrice } from './branch.ts';
import { buildInstance } from './build-instance.ts';
import { dive, greedy } from './dive.ts';
import { emptyPool, wholeRest } from './generate.ts';
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

/** Alternates neighbourhood search and branch and price until the bound is met or the effort is spent. */
function* search(
  instance: Instance,
  store: Store,
  standing: Standing,
  options: SolveOptions,
): Generator<void, void, void> {
  const stream = random(options.seed);
  const take = (plan: Plan): void => {
    if (plan.objective < standing.best.objective) standing.best = plan;
  };
  const better = (plan: Plan): boolean => {
    take(plan);
    return isMet(standing);
  };
  yield* improve(instance, standing.best, store.pool, stream, Math.round(6 * options.effort), better);
  const root: SearchNode = { copies: wholeRest(instance).copies, rows: [], bound: standing.bound, depth: 0 };
  yield* branchAndPrice(instance, wholeRest(instance), store, root, Math.round(60 * options.effort), {
    offer: take,
    cutoff: () => standing.best.objective - slackOf(standing.best.objective),
    raise: (bound) => {
      const rounded = roundedBound(instance, bound, standing.best.objective);
      standing.bound = Math.max(standing.bound, rounded);
    },
    *after(node) {
      if (node.depth % 3 !== 1) return;
      const rest = { demand: wholeRest(instance).demand, copies: node.copies.slice() };
      take(planOf(instance, yield* dive(instance, rest, store.pool, { first: 1, later: 3 })));
    },
  });
  if (isMet(standing)) return;
  yield* improve(instance, standing.best, store.pool, stream, Math.round(24 * options.effort), better);
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
    best: planOf(instance, greedy(instance, wholeRest(instance), store.pool)),
    bound: job.shop.goal === 'most value' ? 0 : areaBound(instance),
  };
  const done = (): boolean => options.stop?.() === true || isMet(standing);
  yield { doing: 'first layout', value: standing.best.objective, bound: standing.bound };
  if (!done()) {
    const limits = { rounds: 100, enough: Infinity };
    const root = yield* told(
      solveNode(instance, wholeRest(instance), store, [], limits),
      standing,
      'finding patterns',
      done,
    );
    const bound = root === null ? -Infinity : roundedBound(instance, root.bound, standing.best.objective);
    standing.bound = Math.max(standing.bound, bound);
  }
  if (!done()) {
    const steps = dive(instance, wholeRest(instance), store.pool, { first: 4, later: 6 });
    const columns = yield* told(steps, standing, 'choosing boards', done);
    const plan = planOf(instance, columns ?? []);
    if (plan.objective < standing.best.objective) standing.best = plan;
  }
  if (!done()) yield* told(search(instance, store, standing, options), standing, 'improving', done);
  return toChoice(job, instance, standing.best, standing.bound);
}
