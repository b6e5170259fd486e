import type { PriceBound } from '../patterns/strip/strip-pricer.ts';
import type { BoardCut } from './boards/board-cut.ts';
import { type Column, columnOf, columnWorth } from './column.ts';
import { countedOn } from './counted-kinds.ts';
import type { Duals } from './duals.ts';
import { columnFound } from './found.ts';
import { type Rest, addToPool, reducedCostTolerance } from './generate.ts';
import type { GroupRow } from './group-row.ts';
import type { Instance } from './instance.ts';
import type { MasterAnswer } from './master.ts';
import { type OpenMaster, bringIn } from './open-master.ts';
import { type PriceAsk, priceInLots } from './price-together.ts';
import { scaledBound } from './scaled-bound.ts';
import type { Store } from './store.ts';
import { dueFor } from './wanted.ts';

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

/** What pricing asks about: the node, its master and the master's last answer. */
export interface Asking {
  readonly instance: Instance;
  readonly rest: Rest;
  readonly store: Store;
  readonly open: OpenMaster;
  readonly answer: MasterAnswer;
  readonly withCapped: boolean;
  /** Whether what a pass says of each board is wanted: then of boards that do not pay as well. */
  readonly withCuts: boolean;
}

/** What a pass through all groups brought. */
export interface Priced {
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
export function* priceAll(asking: Asking, at: Duals, slack: number): Generator<void, Priced, void> {
  const { instance, rest, store, open } = asking;
  const { rows } = open;
  let found = 0;
  let least = dueFor(instance, rest, at.kindPrice);
  rows.forEach((row, r) => (least -= row.limit * at.sidePrice[r]!));
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
      mayBeLoose: true,
    };
  });
  const answers = yield* priceInLots(instance.price, asks);
  wanted.forEach((g, i) => {
    const { worth, even, fixed } = prices[i]!;
    const free = answers[i]!;
    worths[g] = Math.max(0, free.bound - fixed);
    found += takePatterns(asking, g, { worth, even, free });
  });
  const bound = scaledBound(instance, rest, least, worths);
  return { found, bound, isExact: slack === 0, cut: { least, worth: worths, price: at.kindPrice } };
}

/** Share of a board's due by which a pattern found at a glance must exceed it: what is less is left to the exact search. */
const worthAGlance = 1e-3;

/** Looks for patterns quickly, all groups in turn; those that use a kind too often are cut down to the caps. Returns how many came in. */
export function* glanceAll(
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
    const column = columnFound(instance, rest, g, pattern);
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
    const key = `${g}|${kind}|${rest.demand[kind]!}`;
    if (store.caps.has(key)) continue;
    store.caps.set(key, capRow(g, kind, rest.demand[kind]!));
    found = 1;
  }
  if (over.length === 0 || !withCapped) return found;
  const other = columnOf(g, group.pricer.pattern(priced.worth, rest.demand, priced.even).placements, group);
  if (columnWorth(other, worth) > even + slack && bringIn(open, instance, store.pool, other)) found = 1;
  return found;
}
