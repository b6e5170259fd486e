import { lostArea } from '../bound.ts';
import type { BoardCut, Refuted } from '../boards/board-cut.ts';
import { cheapestBoards } from '../boards/cheapest-boards.ts';
import { wholeRest } from '../generate.ts';
import { type Instance, hasCosts, slotsOf } from '../instance.ts';
import { type Plan, planOf } from '../plan.ts';
import { type Nodes, coverExactly } from './cover.ts';
import { grownArea, leastClaim } from '../areas.ts';
import { type TightPattern, flawsOf, tightPatterns } from './tight-patterns.ts';

/** Share of the area of a set of boards that may be left over for it to be worth a try. */
const mostLeftOver = 0.01;

/** Most copies of boards among which the cheapest by area are sought. */
const mostTightSlots = 200;

/** What a pattern may lose, as a share of what may be lost in all: little at first. */
const shares = [0, 1 / 32, 1 / 8, 1 / 3, 1];

/** Sets of boards tried, cheapest first. */
const mostSets = 2;

/** Steps and blocks for one board, nodes for one cover. */
const stepsPerBoard = 150_000;
const blocksPerBoard = 20_000;
const mostNodes = 2_000;

/** Nodes of one search for the cheapest set. */
const mostSetNodes = 20_000;

/** Work of one step, of one list of a board's patterns beside its steps, and of one node for each of its patterns. */
const workPerStep = 3;
const workPerList = 2000;
const workPerPattern = 10;

/**
 * What areas say of any set of boards, as a cut: at a price for each piece in proportion to its grown area, no board
 * holds more than its own grown area less what flaws take (see `areaBound`). Prices are at most the penalties.
 */
function areaCut(instance: Instance): BoardCut {
  const first = instance.groups[0]!;
  const claim = instance.kinds.map((kind) => leastClaim(first, kind));
  const unit = Math.min(...instance.kinds.map(({ penalty }, k) => penalty / claim[k]!));
  const price = Float64Array.from(claim, (area) => area * unit);
  const least = instance.kinds.reduce((sum, { demand }, k) => sum + demand * price[k]!, 0);
  const worth = Float64Array.from(instance.groups, (group) =>
    Math.max(0, unit * (grownArea(group, group.plate) - lostArea(group))),
  );
  return { least, worth, price };
}

/** Few boards, which cost something; three stages or more; no runs. */
function isFitFor(instance: Instance): boolean {
  const { groups, kinds } = instance;
  if (slotsOf(instance) > mostTightSlots || !hasCosts(instance)) return false;
  if (groups.some(({ plate: { stages } }) => stages !== 'any' && (stages < 3 || stages > 4))) return false;
  return kinds.every(({ members }) => members.length === 1);
}

/**
 * Tries to lay everything out on the cheapest boards whose area suffices, where that leaves next to nothing over: then all
 * patterns of a board that lose little are few, and can be listed. Offers what it finds. Yields after each board.
 */
export function* layOutTightly(
  instance: Instance,
  floor: number,
  work: number,
  cutoff: () => number,
  offer: (plan: Plan) => void,
): Generator<void, void, void> {
  if (!isFitFor(instance)) return;
  const until = instance.meter.spent + work;
  const cost = instance.groups.map((group) => group.cost);
  const { copies } = wholeRest(instance);
  const cuts = [areaCut(instance)];
  const tried: Refuted[] = [];
  while (tried.length < mostSets && instance.meter.spent < until) {
    instance.meter.spent += 100 * copies.length;
    const question = { cost, copies, cuts, refuted: tried, cutoff: cutoff(), floor, mostNodes: mostSetNodes };
    const { set } = cheapestBoards(question);
    if (set === null) return;
    const plan = yield* onSet(instance, set.copies, until);
    if (plan !== null) {
      offer(plan);
      return;
    }
    tried.push({ copies: set.copies, least: Infinity });
  }
}

/** A plan that uses exactly these boards and wastes next to nothing; null when none is found. */
function* onSet(instance: Instance, copies: Int32Array, until: number): Generator<void, Plan | null, void> {
  const { demand } = wholeRest(instance);
  const groups = [...copies.keys()].filter((g) => copies[g]! > 0);
  let area = 0;
  let over = 0;
  for (const g of groups) {
    const group = instance.groups[g]!;
    const flaws = flawsOf(group).reduce((sum, { length, width }) => sum + length * width, 0);
    area += copies[g]! * grownArea(group, group.plate);
    over += copies[g]! * (grownArea(group, group.plate) - flaws);
  }
  const first = instance.groups[groups[0] ?? 0]!;
  over -= instance.kinds.reduce((sum, kind, k) => sum + demand[k]! * grownArea(first, kind), 0);
  if (over < 0 || over > mostLeftOver * area) return null;
  const known = new Map<number, { patterns: readonly TightPattern[]; isComplete: boolean }>();
  for (const share of shares) {
    for (const g of groups) {
      if (known.get(g)?.isComplete === false) continue;
      const allowance = { steps: stepsPerBoard, mostBlocks: blocksPerBoard };
      const found = tightPatterns(instance.groups[g]!, g, demand, share * over, allowance);
      instance.meter.spent += workPerList + workPerStep * (stepsPerBoard - allowance.steps);
      if (found.isComplete || !known.has(g)) known.set(g, found);
      else known.set(g, { patterns: known.get(g)!.patterns, isComplete: false });
      yield;
      if (instance.meter.spent > until) return null;
    }
    const patterns = [...known.values()].flatMap((each) => each.patterns);
    const nodes: Nodes = { left: mostNodes };
    const columns = coverExactly(patterns, { demand, copies }, over, nodes);
    instance.meter.spent += workPerPattern * patterns.length * (mostNodes - Math.max(0, nodes.left));
    if (columns !== null) return planOf(instance, columns);
    if (over === 0 || [...known.values()].every((each) => !each.isComplete)) break;
  }
  return null;
}
