import type { Meter } from '../../patterns/meter.ts';
import { mixed } from '../duals.ts';
import type { Restriction, StickDuals, StickMaster } from './stick-master.ts';
import type { StickPricer } from './stick-pricer.ts';
import { type Pattern, type Sticks, patternWorth, raised } from './sticks.ts';

/** What every step of the solve shares. */
export interface StickSolve {
  readonly sticks: Sticks;
  readonly pricer: StickPricer;
  readonly meter: Meter;
}

/** Prices of kinds and of the stocks' scarcity. */
export interface Point {
  readonly kind: Float64Array;
  readonly stock: Float64Array;
  /** See StickDuals. */
  readonly fixed: number;
}

export interface GeneratedSticks {
  /** The last master's answer; null when the bound cut it off first. */
  readonly duals: StickDuals | null;
  /** A valid bound on what the rest costs under the restriction. */
  readonly bound: number;
  /** The prices that gave the bound, scaled so that no pattern has a negative reduced cost. */
  readonly proof: Point;
}

export interface GenerateLimits {
  /** Ends once the bound, raised, reaches this: the node can be cut off. */
  readonly cutoff: number;
  /** Ends once the master's objective is no more than this. */
  readonly enough: number;
  readonly until: number;
  /** Prices that are judged first, and leant towards. */
  readonly center: Point;
  /** Goes on when the bound raised meets the objective: a sharper bound bans more. */
  readonly sharp?: boolean;
}

function between(a: Point, b: Point, share: number): Point {
  return {
    kind: mixed(a.kind, b.kind, share),
    stock: mixed(a.stock, b.stock, share),
    fixed: share * a.fixed + (1 - share) * b.fixed,
  };
}

function scaled(point: Point, share: number): Point {
  const times = (values: Float64Array): Float64Array => values.map((value) => value * share);
  return { kind: times(point.kind), stock: times(point.stock), fixed: share * point.fixed };
}

/**
 * The bound that prices give, with `most` the greatest worth of a pattern of each stock. Farley's (1990): all prices
 * times the largest share at which no pattern is worth more than its stick costs.
 */
function farley(
  { sticks }: StickSolve,
  { rest }: Restriction,
  point: Point,
  most: Float64Array,
): { readonly bound: number; readonly share: number } {
  let value = point.fixed;
  rest.demand.forEach((count, k) => (value += Math.max(0, count) * point.kind[k]!));
  let share = 1;
  sticks.stocks.forEach(({ cost }, g) => {
    if (rest.copies[g]! <= 0) return;
    const worth = most[g]! - point.stock[g]!;
    if (worth > cost) share = Math.min(share, cost / worth);
  });
  return { bound: share * value, share };
}

/** Prices by length alone: no pattern is worth more than its stick, and the bound is that of the material. */
export function pricesByLength(sticks: Sticks): Point {
  const each = sticks.stocks.reduce((least, { cost, length }) => Math.min(least, cost / length), Infinity);
  return {
    kind: Float64Array.from(sticks.lengths, (length) => length * each),
    stock: new Float64Array(sticks.stocks.length),
    fixed: 0,
  };
}

/** Work of one elementary step of the master's simplex. */
const workPerStep = 0.3;

/** How far prices lean towards those of the best bound so far (Wentges 1997): they swing less, and fewer rounds do. */
const lean = 0.6;

/**
 * Column generation under a restriction, until no pattern has a negative reduced cost, the bound raised meets the
 * objective raised, or a limit is reached. Yields after each round.
 */
export function* generateSticks(
  solve: StickSolve,
  master: StickMaster,
  at: Restriction,
  limits: GenerateLimits,
): Generator<void, GeneratedSticks, void> {
  const { sticks, meter } = solve;
  let best = limits.center;
  let bound = -Infinity;
  const wanted = 1 + Math.ceil(sticks.lengths.length / 12);
  master.aim(at);
  /** Prices patterns, raises the bound by what it finds, and returns the best of them. */
  const judged = (point: Point): readonly Pattern[] => {
    const even = Float64Array.from(sticks.stocks, (stock, g) => stock.cost + point.stock[g]!);
    const priced = solve.pricer.price({ kind: point.kind, even, arcs: at.banned }, at.rest, wanted);
    const value = farley(solve, at, point, priced.most);
    if (value.bound > bound) {
      bound = value.bound;
      best = scaled(point, value.share);
    }
    return priced.patterns.slice(0, wanted);
  };
  for (const pattern of judged(limits.center)) master.add(pattern);
  for (;;) {
    if (raised(sticks, bound) >= limits.cutoff - 1e-9) return { duals: null, bound, proof: best };
    const duals = master.solve();
    meter.spent += duals.steps * workPerStep;
    let found = 0;
    for (const share of [lean, 0]) {
      for (const pattern of judged(share === 0 ? duals : between(best, duals, share))) {
        const price = sticks.stocks[pattern.stock]!.cost + duals.stock[pattern.stock]!;
        if (patternWorth(pattern, duals.kind) > price + 1e-7 && master.add(pattern)) found += 1;
      }
      if (found > 0) break;
    }
    yield;
    const done =
      found === 0 ||
      duals.objective <= limits.enough ||
      (limits.sharp !== true && sticks.whole && raised(sticks, bound) >= duals.objective) ||
      meter.spent > limits.until;
    if (done) return { duals, bound, proof: best };
  }
}
