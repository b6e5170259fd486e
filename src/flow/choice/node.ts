import type { PriceBound } from '../patterns/strip/strip-pricer.ts';
import type { BoardCut } from './boards/board-cut.ts';
import { type Column, columnOf, columnWorth } from './column.ts';
import { countMore, countedOn } from './counted-kinds.ts';
import { type Rest, addToPool, reducedCostTolerance } from './generate.ts';
import type { GroupRow } from './group-row.ts';
import type { Instance } from './instance.ts';
import type { MasterAnswer } from './master.ts';
import { type PriceAsk, priceInLots, withinCaps } from './price-together.ts';
import { type OpenMaster, bringIn, broughtUp, openedAt } from './open-master.ts';
import { type Duals, between } from './duals.ts';
import type { Store } from './store.ts';
import { dueFor } from './wanted.ts';

/** Work of a master's solve for each of its rows and columns. */
const workPerCell = 8;

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

/** Prices of one group's pieces and of its board under the master's duals, side rows included. */
interface GroupPrices {
  readonly worth: Float64Array;
  /** What a pattern of the group must be worth to have reduced cost 0. */
  readonly even: number;
  /** Of `even`, the part that belongs to side rows: Σ σ (perCopy or sign) terms. */
  readonly fixed: number;
}

function groupPrices(instance: Instance, g: number, answer: Duals, rows: readonly GroupRow[]): GroupPrices {
  const { claims } = instance.groups[g]!;
  const worth = answer.kindPrice.map((price, k) => price - claims[k]!);
  let fixed = 0;
  rows.forEach((row, r) => {
    if (row.group !== g) return;
    const price = answer.sidePrice[r]!;
    if (price === 0) return;
    for (const kind of row.beside ?? []) worth[kind] = worth[kind]! - row.sign * price;
    if (row.kind >= 0) worth[row.kind] = worth[row.kind]! - row.sign * price;
    else if (row.beside === undefined) fixed += row.sign * price;
    fixed -= row.perCopy * price;
  });
  return { worth, fixed, even: instance.groups[g]!.cost + answer.groupPrice[g]! + fixed };
}

function overCaps(column: Column, rest: Rest): number[] {
  return column.kinds.filter((kind, i) => column.counts[i]! > rest.demand[kind]!);
}

function capRow(group: number, kind: number, demand: number): GroupRow {
  return { group, kind, sign: 1, perCopy: demand, limit: 0 };
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
  const isGeneral = instance.groups.some(({ pricer }) => !pricer.isQuickAtAGlance() && !pricer.canCount());
  let share = isGeneral ? 0 : shareOfCenter;
  // Once a pass at the master's own prices finds nothing, only an exact one can end it.
  let mayBeLax = true;
  for (let round = 1; ; round += 1) {
    open = broughtUp(open, instance, rest, store, branching);
    const { rows } = open;
    const columns = open.columns.slice();
    const answer = open.master.solve();
    store.pool.prices = { kind: answer.kindPrice, group: answer.groupPrice };
    instance.meter.spent += workPerCell * (1 + rows.length + instance.kinds.length) * (1 + columns.length);
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

/** What pricing asks about: the node, its master and the master's last answer. */
interface Asking {
  readonly instance: Instance;
  readonly rest: Rest;
  readonly store: Store;
  readonly open: OpenMaster;
  readonly answer: MasterAnswer;
  readonly withCapped: boolean;
  /** Whether what a pass says of each board is wanted: then of boards that do not pay as well. */
  readonly withCuts: boolean;
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

/** What a pass through all groups brought. */
interface Priced {
  /** Patterns and caps that came in. */
  readonly found: number;
  readonly bound: number;
  readonly isExact: boolean;
  readonly cut: BoardCut;
}

/**
 * A pass through all groups at the prices given: their bound, and the patterns that pay at the master's own prices.
 * @param slack share of a board's cost by which its bound may be too high
 */
function* priceAll(asking: Asking, at: Duals, slack: number): Generator<void, Priced, void> {
  const { instance, rest, store, open } = asking;
  const { rows } = open;
  let found = 0;
  let bound = dueFor(instance, rest, at.kindPrice);
  rows.forEach((row, r) => (bound -= row.limit * at.sidePrice[r]!));
  const least = bound;
  const worths = new Float64Array(instance.groups.length);
  const wanted = [...instance.groups.keys()].filter((g) => rest.copies[g] !== 0);
  const prices = wanted.map((g) => groupPrices(instance, g, at, rows));
  const asks = wanted.map((g, i): PriceAsk => {
    const { pricer, cost } = instance.groups[g]!;
    const { worth, even } = prices[i]!;
    const counted = countedOn(store.counted, pricer, rest.demand);
    return {
      pricer,
      how: 'bound',
      worth,
      target: even,
      slack: slack * cost,
      counted,
      isClose: asking.withCuts,
    };
  });
  const answers = yield* priceInLots(instance.price, asks);
  wanted.forEach((g, i) => {
    const { worth, even, fixed } = prices[i]!;
    const free = answers[i]!;
    worths[g] = Math.max(0, free.bound - fixed);
    bound -= rest.copies[g]! * Math.max(0, worths[g]! - instance.groups[g]!.cost);
    found += takePatterns(asking, g, { worth, even, free });
  });
  return { found, bound, isExact: slack === 0, cut: { least, worth: worths, price: at.kindPrice } };
}

/** Share of a board's due by which a pattern found at a glance must exceed it: what is less is left to the exact search. */
const worthAGlance = 1e-3;

/** Looks for patterns quickly, all groups in turn; those that use a kind too often are cut down to the caps. Returns how many came in. */
function* glanceAll(
  { instance, rest, store, answer, open }: Asking,
  fine: boolean,
): Generator<void, number, void> {
  const { groups } = instance;
  const wanted = [...groups.keys()].filter(
    (g) => rest.copies[g] !== 0 && groups[g]!.pricer.isQuickAtAGlance(),
  );
  const asks = wanted.map((g): PriceAsk => {
    const { worth, even } = groupPrices(instance, g, answer, open.rows);
    const target = even + worthAGlance * (1 + Math.abs(even));
    return { pricer: groups[g]!.pricer, how: fine ? 'fine' : 'rough', worth, target, slack: 0 };
  });
  let found = 0;
  const answers = yield* priceInLots(instance.price, asks);
  answers.forEach(({ pattern }, i) => {
    if (pattern === null) return;
    const g = wanted[i]!;
    const { worth, target } = asks[i]!;
    const column = columnOf(g, withinCaps(pattern.placements, rest.demand), groups[g]!);
    if (columnWorth(column, worth) > target && bringIn(open, instance, store.pool, column)) found += 1;
  });
  return found;
}

/**
 * Adds what pricing one group found, where it pays at the master's own prices: its best pattern if the caps allow it,
 * else its caps and a pattern within them.
 */
function takePatterns(
  { instance, rest, store, answer, open, withCapped }: Asking,
  g: number,
  priced: { readonly worth: Float64Array; readonly even: number; readonly free: PriceBound },
): number {
  const { free } = priced;
  const group = instance.groups[g]!;
  const slack = reducedCostTolerance * (1 + group.cost);
  if (free.bound <= priced.even + slack || free.pattern === null) return 0;
  const { worth, even } = groupPrices(instance, g, answer, open.rows);
  const column = columnOf(g, free.pattern.placements, group);
  const over = overCaps(column, rest);
  if (columnWorth(column, worth) <= even + slack) return 0;
  let found = over.length === 0 && bringIn(open, instance, store.pool, column) ? 1 : 0;
  if (over.length > 0 && addToPool(store.relaxed, column)) found = 1;
  for (const kind of over) {
    const key = `${g}|${kind}`;
    if (store.caps.has(key)) continue;
    store.caps.set(key, capRow(g, kind, rest.demand[kind]!));
    found = 1;
  }
  if (over.length === 0 || !withCapped) return found;
  const other = columnOf(g, group.pricer.pattern(priced.worth, rest.demand, priced.even).placements, group);
  if (columnWorth(other, worth) > even + slack && bringIn(open, instance, store.pool, other)) found = 1;
  return found;
}
