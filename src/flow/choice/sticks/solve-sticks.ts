import { random } from '../../../base/random/random.ts';
import type { Instance } from '../instance.ts';
import type { Plan } from '../plan.ts';
import { branchSticks, canBranch } from './branch-sticks.ts';
import { diveSticks } from './dive-sticks.ts';
import { firstFit } from './first-fit.ts';
import { type StickSolve, generateSticks, pricesByLength } from './generate-sticks.ts';
import { openStickMaster } from './stick-master.ts';
import { openStickPricer } from './stick-pricer.ts';
import { type Cutting, type Pattern, cuttingOf, raised, wholeRemainder } from './sticks.ts';
import { toPlan, toSticks } from './to-sticks.ts';

export interface SticksOptions {
  readonly seed: number;
  /** The meter's reading at which to end. */
  readonly until: number;
}

/** How the solve of a job of sticks stands. */
export interface SticksStanding {
  readonly plan: Plan;
  /** A valid bound on the objective of every plan, in money. */
  readonly bound: number;
}

/** Shares of the budget for the first dives, and how many of them there are. */
const divesUntil = 0.35;
const dives = 3;

/** Share of the budget after which the search gives way to another dive. */
const diveShare = 0.04;

/** Work that one dive counts for at least. */
const workPerDive = 100_000;

/**
 * Solves a job of sticks (see isSticks): column generation with bounded knapsacks, its bound raised to the next whole
 * cost, dives, and branch and price on arcs until the bound is met or the effort is spent. Yields after each step of
 * the work how it stands; the caller may stop at any of them. Deterministic.
 */
export function* solveSticks(
  instance: Instance,
  options: SticksOptions,
): Generator<SticksStanding, SticksStanding, void> {
  const job = toSticks(instance);
  const { sticks } = job;
  const { meter } = instance;
  const solve: StickSolve = {
    sticks,
    meter,
    pricer: openStickPricer(sticks, meter),
  };
  const master = openStickMaster(sticks);
  const start = meter.spent;
  const first = firstFit(sticks, wholeRemainder(sticks));
  for (const pattern of first) master.add(pattern);
  let best: Cutting = cuttingOf(sticks, first);
  const everything = sticks.stocks.reduce((sum, stock) => sum + stock.cost * stock.copies, 0);
  let bound = -Infinity;
  let told: SticksStanding = { plan: toPlan(instance, job, first), bound: job.fixed };
  const offer = (patterns: readonly Pattern[]): void => {
    const cutting = cuttingOf(sticks, patterns);
    if (cutting.cost >= best.cost - 1e-9) return;
    best = cutting;
    told = { ...told, plan: toPlan(instance, job, patterns) };
  };
  const raise = (to: number): void => {
    if (to <= bound) return;
    // A plan that leaves a piece out costs more than all sticks together, in money as here.
    bound = Math.min(to, best.cost, everything);
    told = { ...told, bound: job.fixed + bound * job.unit };
  };
  const target = (): number => best.cost - (sticks.whole ? 1 : 1e-9 * (1 + best.cost));
  const met = (): boolean => bound > target() + 1e-9;
  const at = { rest: wholeRemainder(sticks), banned: [], least: [] };

  const root = generateSticks(solve, master, at, {
    cutoff: Infinity,
    enough: -Infinity,
    until: options.until,
    center: pricesByLength(sticks),
  });
  let step = root.next();
  for (; step.done !== true; step = root.next()) yield told;
  const { bound: least, proof } = step.value;
  raise(raised(sticks, least));
  const stream = random(options.seed);
  // Where the search cannot take over, dives go on to the end; with several stocks they find what the search finds late.
  const branches = canBranch(sticks, solve.pricer);
  const share = branches ? start + divesUntil * (options.until - start) : options.until;
  const dive = (d: number, until: number): Generator<void, void, void> => {
    // A dive that dies at once costs next to nothing by its own count: where none can live they went on for ever.
    meter.spent += workPerDive;
    return diveSticks(solve, master, at, {
      center: proof,
      before: [],
      shake: 0.15 * Math.min(d, 6),
      stream,
      until,
      target,
      offer,
    });
  };
  let d = 0;
  for (; (d < dives || !branches || sticks.stocks.length > 1) && !met() && meter.spent < share; d += 1) {
    const steps = dive(d, share);
    for (let each = steps.next(); each.done !== true && !met(); each = steps.next()) yield told;
  }
  if (branches && !met()) {
    const search = branchSticks(sticks, meter, {
      target,
      offer,
      raise,
      until: options.until,
      bound: least,
      center: proof,
      incumbent: best.patterns,
    });
    // Now and then another dive: what the search meets late a lucky dive may find at once.
    const pause = diveShare * (options.until - start);
    let next = meter.spent + pause;
    for (let each = search.next(); each.done !== true && !met(); each = search.next()) {
      yield told;
      if (meter.spent < next) continue;
      const steps = dive((d += 1), options.until);
      for (let one = steps.next(); one.done !== true && !met(); one = steps.next()) yield told;
      next = meter.spent + pause;
    }
  }
  return told;
}
