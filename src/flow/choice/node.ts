import type { PriceBound } from '../patterns/strip/strip-pricer.ts';
import type { BoardCut } from './boards/board-cut.ts';
import { type Column, columnOf, columnWorth } from './column.ts';
import { type Rest, addToPool, enoughPatterns, reducedCostTolerance, withinCaps } from './generate.ts';
import type { GroupRow } from './group-row.ts';
import type { Instance } from './instance.ts';
import type { MasterAnswer } from './master.ts';
import { type OpenMaster, bringIn, broughtUp, openedAt } from './open-master.ts';
import type { Store } from './store.ts';

/** Work of a master's solve for each of its rows and columns. */
const workPerCell = 8;

export interface NodeAnswer {
  readonly answer: MasterAnswer;
  readonly columns: readonly Column[];
  /** A valid bound on every plan that obeys the node's rows. */
  readonly bound: number;
  /** What each pass through all groups said of them, the one with the best bound last. */
  readonly cuts: readonly BoardCut[];
}

/** How long to go on at a node. */
export interface NodeLimits {
  readonly rounds: number;
  /** A bound that ends it. */
  readonly enough: number;
  /** Meter reading that ends it. */
  readonly until: number;
  /** Whether to look for patterns within the caps too: dearer, and what a dive needs. */
  readonly capped: boolean;
}

/** Prices of one group's pieces and of its board under the master's duals, side rows included. */
interface GroupPrices {
  readonly worth: Float64Array;
  /** What a pattern of the group must be worth to have reduced cost 0. */
  readonly even: number;
  /** Of `even`, the part that belongs to side rows: Σ σ (perCopy or sign) terms. */
  readonly fixed: number;
}

function groupPrices(
  instance: Instance,
  g: number,
  answer: MasterAnswer,
  rows: readonly GroupRow[],
): GroupPrices {
  const { rate } = instance.groups[g]!;
  const worth = answer.kindPrice.map(
    (price, k) => price - rate * instance.kinds[k]!.length * instance.kinds[k]!.width,
  );
  let fixed = 0;
  rows.forEach((row, r) => {
    if (row.group !== g) return;
    const price = answer.sidePrice[r]!;
    if (price === 0) return;
    if (row.kind >= 0) worth[row.kind] = worth[row.kind]! - row.sign * price;
    else fixed += row.sign * price;
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
 * Yields after each round.
 */
export function* solveNode(
  instance: Instance,
  rest: Rest,
  store: Store,
  branching: readonly GroupRow[],
  limits: NodeLimits,
): Generator<void, NodeAnswer, void> {
  let bound = -Infinity;
  const cuts: BoardCut[] = [];
  let open = openedAt(instance, rest, store, branching);
  for (let round = 1; ; round += 1) {
    open = broughtUp(open, instance, rest, store, branching);
    const { rows } = open;
    const columns = open.columns.slice();
    const answer = open.master.solve();
    store.pool.prices = { kind: answer.kindPrice, group: answer.groupPrice };
    instance.meter.spent += workPerCell * (1 + rows.length + instance.kinds.length) * (1 + columns.length);
    const priced = priceAll(instance, rest, store, answer, open, round, limits.capped);
    if (priced.cut !== null) cuts.splice(priced.bound > bound ? cuts.length : 0, 0, priced.cut);
    bound = Math.max(bound, priced.bound);
    yield;
    const short = answer.objective - bound <= 1e-7 * (1 + Math.abs(answer.objective));
    if (
      priced.found === 0 ||
      short ||
      bound >= limits.enough ||
      round >= limits.rounds ||
      instance.meter.spent > limits.until
    ) {
      return { answer, columns, bound, cuts };
    }
  }
}

/**
 * Prices group after group, beginning elsewhere each round, until enough patterns are found. Only a pass through all
 * groups gives a bound.
 */
function priceAll(
  instance: Instance,
  rest: Rest,
  store: Store,
  answer: MasterAnswer,
  open: OpenMaster,
  round: number,
  withCapped: boolean,
): { found: number; bound: number; cut: BoardCut | null } {
  const { rows } = open;
  let found = 0;
  let bound = 0;
  rest.demand.forEach((demand, k) => (bound += demand * answer.kindPrice[k]!));
  rows.forEach((row, r) => (bound -= row.limit * answer.sidePrice[r]!));
  const least = bound;
  const worths = new Float64Array(instance.groups.length);
  const glanced = glanceAll(instance, rest, store, answer, open);
  if (glanced > 0) return { found: glanced, bound: -Infinity, cut: null };
  const all = instance.groups.length;
  const enough = enoughPatterns(instance);
  for (let turn = 0; turn < all; turn += 1) {
    const g = (turn + round * enough) % all;
    if (rest.copies[g] === 0) continue;
    if (found >= enough) return { found, bound: -Infinity, cut: null };
    const { worth, even, fixed } = groupPrices(instance, g, answer, rows);
    const free = instance.groups[g]!.pricer.bound(worth, even);
    worths[g] = Math.max(0, free.bound - fixed);
    bound -= rest.copies[g]! * Math.max(0, worths[g]! - instance.groups[g]!.cost);
    found += takePatterns(instance, g, rest, store, open, { worth, even, free }, withCapped);
  }
  return { found, bound, cut: { least, worth: worths, price: answer.kindPrice } };
}

/** Share of a board's due by which a pattern found at a glance must exceed it: what is less is left to the exact search. */
const worthAGlance = 1e-3;

/** Looks for patterns quickly, all groups in turn; those that use a kind too often are cut down to the caps. Returns how many came in. */
function glanceAll(
  instance: Instance,
  rest: Rest,
  store: Store,
  answer: MasterAnswer,
  open: OpenMaster,
): number {
  let found = 0;
  const { rows } = open;
  instance.groups.forEach((group, g) => {
    if (rest.copies[g] === 0 || !group.pricer.isQuickAtAGlance()) return;
    const { worth, even } = groupPrices(instance, g, answer, rows);
    const target = even + worthAGlance * (1 + Math.abs(even));
    const pattern = group.pricer.glance(worth, target);
    if (pattern === null) return;
    const column = columnOf(g, withinCaps(pattern.placements, rest.demand), group);
    if (columnWorth(column, worth) > target && bringIn(open, store.pool, column)) found += 1;
  });
  return found;
}

/** Adds what pricing one group found: its best pattern if the caps allow it, else its caps and a pattern within them. */
function takePatterns(
  instance: Instance,
  g: number,
  rest: Rest,
  store: Store,
  open: OpenMaster,
  priced: { readonly worth: Float64Array; readonly even: number; readonly free: PriceBound },
  withCapped: boolean,
): number {
  const { worth, even, free } = priced;
  const group = instance.groups[g]!;
  const slack = reducedCostTolerance * (1 + group.cost);
  if (free.bound <= even + slack || free.pattern === null) return 0;
  const column = columnOf(g, free.pattern.placements, group);
  const over = overCaps(column, rest);
  let found = over.length === 0 && bringIn(open, store.pool, column) ? 1 : 0;
  if (over.length > 0 && addToPool(store.relaxed, column)) found = 1;
  for (const kind of over) {
    const key = `${g}|${kind}`;
    if (store.caps.has(key)) continue;
    store.caps.set(key, capRow(g, kind, rest.demand[kind]!));
    found = 1;
  }
  if (over.length === 0 || !withCapped) return found;
  const other = columnOf(g, group.pricer.pattern(worth, rest.demand, even).placements, group);
  if (columnWorth(other, worth) > even + slack && bringIn(open, store.pool, other)) found = 1;
  return found;
}
