import { type Random, uniform, whole } from '../../base/random/random.ts';
import { type Column, columnLoss } from './column.ts';
import { layOutAgain } from './again.ts';
import { dive } from './dive.ts';
import { greedy, tastedWorth } from './greedy.ts';
import { type Pool, type Rest, wholeRest } from './generate.ts';
import type { Instance } from './instance.ts';
import { type Plan, piecesCut, planOf, restAfter, waysOf } from './plan.ts';
import type { Store } from './store.ts';
import { drawnWays, leftToLay, withWaysFixed } from './ways.ts';

/** Board area that the column leaves empty, as a share. */
function emptiness(instance: Instance, column: Column): number {
  const { plate } = instance.groups[column.group]!;
  const area = plate.length * plate.width;
  const used = column.placements.reduce((sum, p) => sum + p.length * p.width, 0);
  return area === 0 ? 1 : 1 - used / area;
}

/** What each column costs beyond what its pieces are worth at the last prices: all together that is the plan's distance from the bound. */
function losses(instance: Instance, { columns }: Plan, { prices }: Pool): number[] {
  return columns.map((column) => {
    if (prices === null) return emptiness(instance, column) * column.cost;
    return Math.max(0, columnLoss(column, prices));
  });
}

/** Which boards to clear: two to `most` or now and then all, those that lose more the likelier. */
export function boardsToClear(
  instance: Instance,
  plan: Plan,
  pool: Pool,
  most: number,
  random: Random,
): Set<number> {
  const all = plan.columns.length;
  const count = uniform(random) < 0.2 && most === mostCleared ? all : Math.min(all, whole(random, 2, most));
  const lost = losses(instance, plan, pool);
  const mean = lost.reduce((sum, each) => sum + each, 0) / all;
  const scored = lost
    .map((each, index) => ({ index, score: (each + 0.3 * mean) * uniform(random) }))
    .sort((a, b) => b.score - a.score);
  return new Set(scored.slice(0, count).map(({ index }) => index));
}

/** Most free groups, beside those just cleared, that a neighbourhood may draw on: half of them the likeliest. */
const mostFreeGroups = 12;

/** How dear the cheapest pattern met of each group is, at the last prices. */
export function dearness(instance: Instance, { columns, prices }: Pool): Float64Array {
  const least = new Float64Array(instance.groups.length).fill(Infinity);
  if (prices === null) return least;
  for (const column of columns) {
    least[column.group] = Math.min(least[column.group]!, columnLoss(column, prices));
  }
  return least;
}

/** The rest with only some of the free boards: those of the incumbent's groups, those that nearly pay, and a draw of the others. */
export function nearby(rest: Rest, columns: readonly Column[], dear: Float64Array, random: Random): Rest {
  const own = new Set(columns.map((column) => column.group));
  const free = [...rest.copies.keys()].filter((g) => rest.copies[g]! > 0 && !own.has(g));
  free.sort((a, b) => dear[a]! - dear[b]! || a - b);
  const copies = rest.copies.slice();
  for (let drop = free.length - mostFreeGroups; drop > 0; drop -= 1) {
    const [g] = free.splice(whole(random, mostFreeGroups / 2, free.length - 1), 1);
    copies[g!] = 0;
  }
  return { demand: rest.demand, copies };
}

/** With more boards than this, layouts are sought among a rough selection of positions. */
const mostFineGroups = 40;

/** What a neighbourhood costs beside its pricing, in work: else tiny jobs, whose pricing costs nothing, would go on for ever. */
const workPerTry = 60_000;

/** Work of one neighbourhood that is laid out as a small job is solved. */
const workPerAgain = 3e7;

/** Most boards cleared at once, short of all; where every try solves its neighbourhood so, more pay. */
const mostCleared = 4;
const mostClearedToSolve = 6;

export interface ImproveLimits {
  readonly tries: number;
  readonly until: number;
  /** Every so many tries one is a dive. */
  readonly diveEvery: number;
  /** Every so many tries of a few boards one is solved as a small job is. */
  readonly solveEvery: number;
}

/**
 * Neighbourhood search: clear a few boards of the incumbent and lay their pieces out again, all free boards at hand,
 * by a greedy of another taste, by a dive, or as a small job is solved; keep what is better. Yields between rounds and
 * after each neighbourhood; stops after `tries` or when the meter passes `until`.
 */
export function* improve(
  instance: Instance,
  start: Plan,
  store: Store,
  random: Random,
  limits: ImproveLimits,
  better: (plan: Plan) => boolean,
): Generator<void, Plan, void> {
  // On a large job a layout from all positions takes longer than it is worth.
  const isFine = instance.groups.length <= mostFineGroups;
  const { until } = limits;
  const { pool } = store;
  const areas = instance.kinds.map(({ length, width }) => length * width);
  let incumbent = start;
  for (let attempt = 1; attempt <= limits.tries && instance.meter.spent < until; attempt += 1) {
    if (incumbent.columns.length === 0) break;
    instance.meter.spent += workPerTry + 1000 * (1 + instance.groups.length);
    const most = limits.solveEvery === 1 ? mostClearedToSolve : mostCleared;
    const cleared = boardsToClear(instance, incumbent, pool, most, random);
    const kept = incumbent.columns.filter((_, index) => !cleared.has(index));
    const near = nearby(restAfter(instance, kept), incumbent.columns, dearness(instance, pool), random);
    const left = leftToLay(instance, piecesCut(instance, kept), near.copies);
    const fixed = withWaysFixed(left, drawnWays(left, waysOf(instance, incumbent.columns), areas, random));
    const rest = wholeRest(fixed);
    const cutoff = incumbent.objective - kept.reduce((sum, { cost }) => sum + cost, 0);
    let found: Column[] | null;
    if (attempt % limits.solveEvery === 0 && cleared.size <= most) {
      instance.meter.spent += 10 * workPerTry;
      const enough = { cutoff, until: Math.min(until, instance.meter.spent + workPerAgain) };
      found = yield* layOutAgain(left, pool, store, enough);
    } else if (attempt % limits.diveEvery === 0) {
      found = yield* dive(fixed, rest, pool, { first: 4, later: 2, until, fine: isFine });
    } else
      found = yield* greedy(fixed, rest, pool, tastedWorth(fixed, random), {
        fine: isFine,
        fromPool: false,
      });
    const plan = planOf(instance, [...kept, ...(found ?? [])]);
    if (plan.objective < incumbent.objective - 1e-9 * (1 + Math.abs(incumbent.objective))) {
      incumbent = plan;
      if (better(plan)) break;
    }
    yield;
  }
  return incumbent;
}
