import type { BoardCut } from './boards/board-cut.ts';
import type { Column } from './column.ts';
import { countMore } from './counted-kinds.ts';
import { type Duals, between } from './duals.ts';
import type { Rest } from './generate.ts';
import type { GroupRow } from './group-row.ts';
import { type Instance, isOfGeneralEngine } from './instance.ts';
import type { MasterAnswer } from './master.ts';
import { type Asking, type Priced, glanceAll, priceAll } from './node-pricing.ts';
import { broughtUp, openedAt } from './open-master.ts';
import type { Store } from './store.ts';

/** Work of a master's solve for each of its cells, at least, and of one pivot for each of them. */
const workPerCell = 8;
const workPerPivot = 0.2;

export interface NodeAnswer {
  readonly answer: MasterAnswer;
  readonly columns: readonly Column[];
  /** A valid bound on every plan that obeys the node's rows. */
  readonly bound: number;
  /** What each pass through all groups said of them, the one with the best bound last; loosely where prices were given to begin with. */
  readonly cuts: readonly BoardCut[];
}

/** How long to go on at a node. */
export interface NodeLimits {
  readonly rounds: number;
  /** A bound that ends it. */
  readonly enough: number;
  /** Relative gap between the master and the bound that ends it; none: 0. */
  readonly close?: number;
  /** Meter reading that ends it. */
  readonly until: number;
  /** Whether to look for patterns within the caps too: dearer, and what a dive needs. */
  readonly capped: boolean;
  /** Whether kinds that the master's patterns use too often are counted from then on: dearer, and a better bound. */
  readonly counts: boolean;
  /** Prices to begin with, and the bound they gave: what is asked are exact passes alone, near these. */
  readonly center?: {
    readonly prices: Float64Array;
    readonly groupPrices: Float64Array;
    readonly bound: number;
  };
}

/**
 * Column generation with exact pricing at one node of the search, to the end or until its bound reaches `enough`
 * or `rounds` are done or the meter passes `until`. A pattern that overuses a kind comes in with a cap row for its group and kind: the cap's dual
 * lowers the kind's worth on that group, so the master tends to the bound of capped patterns.
 * Bound, valid for any duals π, σ ≥ 0:
 *   Σ d π − Σ σ·limit − Σ_g q_g · max(0, B_g(π − σ) − fixed_g − c_g),
 * since the reduced cost of every pattern of g is at least c_g + fixed_g − B_g.
 * Yields after each round, and within it after each few boards asked.
 */
export function* solveNode(
  instance: Instance,
  rest: Rest,
  store: Store,
  branching: readonly GroupRow[],
  limits: NodeLimits,
): Generator<void, NodeAnswer, void> {
  let bound = limits.center?.bound ?? -Infinity;
  const cuts: BoardCut[] = [];
  let open = openedAt(instance, rest, store, branching);
  const few = fewPatterns * instance.groups.length;
  let before = Infinity;
  /** 0: rough glances, 1: fine ones, 2: exact. */
  let care = limits.center === undefined ? 0 : 2;
  let center = centerOf(limits);
  // The general engine's bounds are not always met by a pattern: mixed prices would ask it in vain.
  let share = isOfGeneralEngine(instance) ? 0 : shareOfCenter;
  // Once a pass at the master's own prices finds nothing, only an exact one can end it.
  let mayBeLax = true;
  for (let round = 1; ; round += 1) {
    open = broughtUp(open, instance, rest, store, branching);
    const { rows } = open;
    const columns = open.columns.slice();
    const answer = open.master.solve();
    store.pool.prices = { kind: answer.kindPrice, group: answer.groupPrice };
    const cells = (1 + rows.length + instance.kinds.length) * (1 + columns.length);
    instance.meter.spent += Math.max(workPerCell, workPerPivot * answer.pivots) * cells;
    const asking: Asking = {
      instance,
      rest,
      store,
      open,
      answer,
      withCapped: limits.capped,
      withCuts: limits.center === undefined,
    };
    const isSlow = before - answer.objective <= worthARound * Math.abs(answer.objective);
    before = answer.objective;
    let isDone = false;
    const wasFine = care > 0;
    let glanced = care < 2 ? yield* glanceAll(asking, wasFine) : 0;
    const isSpent = glanced === 0 || (glanced <= few && isSlow);
    if (isSpent && care === 0) {
      care = 1;
      glanced = yield* glanceAll(asking, true);
    }
    if (glanced === 0 || (isSpent && wasFine)) {
      care = 2;
      const gap = (answer.objective - bound) / (1 + Math.abs(answer.objective));
      // Mixed prices only come nearer and nearer: the last step is the master's own.
      const isOwn = center === null || share === 0 || gap < worthMixing;
      const at: Duals = isOwn ? answer : between(center!, answer, share);
      const slack = mayBeLax && gap > worthSlack ? Math.min(mostSlack, slackOfGap * gap) : 0;
      const priced: Priced = yield* priceAll(asking, at, slack);
      mayBeLax = priced.found > 0 || at !== answer;
      cuts.splice(priced.bound > bound ? cuts.length : 0, 0, priced.cut);
      if (priced.bound > bound) center = at;
      else if (priced.found === 0 && at !== answer) share = share < 0.1 ? 0 : share / 2;
      isDone = priced.found === 0 && at === answer && priced.isExact;
      bound = Math.max(bound, priced.bound);
    }
    yield;
    const close = Math.max(bothEqual, limits.close ?? 0);
    const short = answer.objective - bound <= close * (1 + Math.abs(answer.objective));
    const { counted } = store;
    const canGoOn = bound < limits.enough && round < limits.rounds && instance.meter.spent <= limits.until;
    if ((isDone || short) && limits.counts && canGoOn) {
      if (countMore(instance, counted, rest.demand, columns, answer.use)) continue;
    }
    if (
      isDone ||
      short ||
      bound >= limits.enough ||
      round >= limits.rounds ||
      instance.meter.spent > limits.until
    ) {
      return { answer, columns, bound, cuts };
    }
  }
}

/** The prices given to begin with; none where none are. */
function centerOf({ center }: NodeLimits): Duals | null {
  if (center === undefined) return null;
  const { prices, groupPrices } = center;
  return { kindPrice: prices, groupPrice: groupPrices, sidePrice: new Float64Array(0) };
}

/** Share of the prices with the best bound so far in those that are asked about (Wentges 1997): a master's own prices swing. */
const shareOfCenter = 0.5;

/** Relative gap below which the master's own prices are asked about, and below which bound and master are one. */
const worthMixing = 1e-5;
const bothEqual = 1e-9;

/** Glances end for good when a round of them brings less than this share of the objective and few patterns, as a share of the groups. */
const worthARound = 2e-3;
const fewPatterns = 0.4;

/**
 * While the gap of a node is wide a board's bound may be too high by a share of its cost: this share of the gap, at most
 * `mostSlack`; nothing once the gap is narrower than `worthSlack`.
 */
const slackOfGap = 0.1;
const mostSlack = 0.02;
const worthSlack = 1e-3;
