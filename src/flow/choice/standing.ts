import { type Random, random } from '../../base/random/random.ts';
import type { Learnt } from './boards/search-boards.ts';
import type { Instance } from './instance.ts';
import type { Plan } from './plan.ts';
import type { Progress } from './progress.ts';
import { roundedBound } from './round-bound.ts';
import { type Store, emptyStore } from './store.ts';
import { keptNear } from './true-cost.ts';
import type { Made } from './ways.ts';

/** Share of the objective below which a gap is rounding. */
const gapTolerance = 1e-7;

/** The best plan and bound so far; one per solve, passed on to every step of it. */
export interface Standing {
  best: Plan;
  bound: number;
  /** The best plans met, that one among them or not. */
  near: readonly Plan[];
}

function slackOf(value: number): number {
  return gapTolerance * (1 + Math.abs(value));
}

/** Whether the bound is met. */
export function isMet({ best, bound }: Standing): boolean {
  return best.objective - bound <= slackOf(best.objective);
}

/** Whether it is known if all pieces can be laid out: the best plan does, or the bound is above what all boards cost. */
export function isKnownWhole({ groups }: Instance, standing: Standing): boolean {
  return standing.best.missing.every((count) => count <= 0) || isOutOfReach(groups, standing.bound);
}

/** Whether a bound on the cost of any layout, pieces left out at a price, says that some must be left out. */
export function isOutOfReach(
  boards: readonly { readonly cost: number; readonly copies: number }[],
  bound: number,
): boolean {
  const all = boards.reduce((sum, { cost, copies }) => sum + cost * copies, 0);
  return bound > all + 1e-6 * (1 + all);
}

/** What the steps of a solve work on together. */
export interface Solving {
  readonly instance: Instance;
  readonly store: Store;
  readonly standing: Standing;
  readonly stream: Random;
  /** What the root's prices say of sets of boards. */
  readonly learnt: Learnt;
  /** Copies that the root's master makes in each way, in shares; null before it. */
  readonly mix: { shares: Made | null };
  /** Work the whole solve may do. */
  readonly budget: number;
}

/** What the steps of a solve work on, at its beginning. */
export function openSolving(instance: Instance, standing: Standing, seed: number): Solving {
  return {
    instance,
    store: emptyStore(),
    standing,
    stream: random(seed),
    learnt: { cuts: [], refuted: [] },
    mix: { shares: null },
    budget: Infinity,
  };
}

/** How it stands, for whoever watches. The value is the goal's only once every piece is laid out. */
export function say(doing: string, { best, bound }: Standing): Progress {
  const isWhole = best.missing.every((count) => count <= 0);
  return { doing, value: isWhole ? best.objective : null, bound };
}

/** Takes a plan in if it is better; says whether the bound is met. */
export function offerTo(standing: Standing): (plan: Plan) => boolean {
  return (plan) => {
    standing.near = keptNear(standing.near, plan);
    if (plan.objective < standing.best.objective) standing.best = plan;
    return isMet(standing);
  };
}

/** What a plan must beat to be worth looking for. */
export function cutoffOf(standing: Standing): () => number {
  return () => standing.best.objective - 0.5 * slackOf(standing.best.objective);
}

/** Takes a bound in, rounded up to what boards can cost. */
export function raiseOf(instance: Instance, standing: Standing): (bound: number) => void {
  return (bound) => {
    if (bound <= standing.bound) return;
    const rounded = roundedBound(instance, bound, standing.best.objective);
    standing.bound = Math.max(standing.bound, rounded);
  };
}

/** A step of a solve, and what it does in words for the maker. */
export type Stage = readonly [string, Generator<void, void, void>];
