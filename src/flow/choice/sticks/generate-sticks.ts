import type { Meter } from '../../patterns/meter.ts';
import type { Restriction, StickDuals, StickMaster } from './stick-master.ts';
import type { StickPricer } from './stick-pricer.ts';
import { type Sticks, patternWorth, raised } from './sticks.ts';

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
  readonly duals: StickDuals;
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
  /** Prices from which to start leaning. */
  readonly center?: Point;
  /** Goes on when the bound raised meets the objective: a sharper bound bans more. */
  readonly sharp?: boolean;
}

function between(a: Point, b: Point, share: number): Point {
  const mix = (p: Float64Array, q: Float64Array): Float64Array =>
    p.map((value, i) => share * value + (1 - share) * q[i]!);
  return {
    kind: mix(a.kind, b.kind),
    stock: mix(a.stock, b.stock),
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
  let best: Point | null = limits.center ?? null;
  let bound = -Infinity;
  const wanted = 1 + Math.ceil(sticks.lengths.length / 12);
  master.aim(at);
  for (;;) {
    const duals = master.solve();
    meter.spent += master.size() * sticks.lengths.length * 26;
    let found = 0;
    for (const share of best === null ? [0] : [lean, 0]) {
      const point: Point = best === null || share === 0 ? duals : between(best, duals, share);
      const even = Float64Array.from(sticks.stocks, (stock, g) => stock.cost + point.stock[g]!);
      const priced = solve.pricer.price({ kind: point.kind, even, arcs: at.banned }, at.rest, wanted);
      const value = farley(solve, at, point, priced.most);
      if (best === null || value.bound > bound) {
        bound = Math.max(bound, value.bound);
        best = scaled(point, value.share);
      }
      for (const pattern of priced.patterns.slice(0, wanted)) {
        const price = sticks.stocks[pattern.stock]!.cost + duals.stock[pattern.stock]!;
        if (patternWorth(pattern, duals.kind) > price + 1e-7 && master.add(pattern)) found += 1;
      }
      if (found > 0) break;
    }
    yield;
    const done =
      found === 0 ||
      duals.objective <= limits.enough ||
      raised(sticks, bound) >= limits.cutoff - 1e-9 ||
      (limits.sharp !== true && sticks.whole && raised(sticks, bound) >= duals.objective) ||
      meter.spent > limits.until;
    if (done) return { duals, bound, proof: best ?? duals };
  }
}
