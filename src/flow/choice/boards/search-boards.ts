import { branchAndPrice } from '../branch.ts';
import { rootNode } from '../search-node.ts';
import { boundBoards } from '../bound-boards.ts';
import { countedOn } from '../counted-kinds.ts';
import type { Column } from '../column.ts';
import { type DiveLimits, dive } from '../dive.ts';
import { wholeRest } from '../generate.ts';
import type { Instance } from '../instance.ts';
import { type NodeAnswer, solveNode } from '../node.ts';
import type { Store } from '../store.ts';
import { type Plan, planOf, withoutSurplus } from '../plan.ts';
import { roundedCopies, sharesOf, withWaysFixed } from '../ways.ts';
import type { BoardCut, Refuted } from './board-cut.ts';
import { type BoardSet, cheapestBoards } from './cheapest-boards.ts';
import { type OnBoards, backToWhole, keepLearnt, onBoards, shareLeft } from './on-boards.ts';

/** What the search over sets of boards asks and reports. */
export interface BoardWatch {
  readonly offer: (plan: Plan) => void;
  /** Objective that a set must beat. */
  readonly cutoff: () => number;
  /** Called when the bound of all plans rises. */
  readonly raise: (bound: number) => void;
}

/** What is known of sets of boards. */
export interface Learnt {
  readonly cuts: BoardCut[];
  readonly refuted: Refuted[];
}

export interface BoardLimits {
  /** Meter reading at which it ends. */
  readonly until: number;
  /** Work on one set that may hold the parts, before the next is looked at. */
  readonly workPerSet: number;
  /** Whether layouts are dived for; without, those that branching meets are all there are. */
  readonly dives: boolean;
}

/** Most copies of boards among which sets are searched. */
export const mostSlots = 60;

/** Nodes of one search for the cheapest set. */
const mostNodes = 40_000;

/** Every so many cuts the boards of the set last cut are tried for a layout, with others beside. */
const diveEvery = 3;

/** The price of a node of the search for sets, in the meter's work: about a tenth of a microsecond for each cut and slot. */
const workPerCut = 3;

/** Money below which two values are one; finer than what a solve counts as met. */
function slackOf(value: number): number {
  return 2e-8 * (1 + Math.abs(value));
}

interface Search {
  readonly instance: Instance;
  readonly store: Store;
  readonly cuts: BoardCut[];
  readonly refuted: Refuted[];
  /** Sets laid aside undecided, as if they were refuted: the bound is then that of the first of them. */
  readonly aside: Refuted[];
  readonly limits: BoardLimits;
  readonly watch: BoardWatch;
}

/**
 * Proves, or finds, the cheapest set of boards that holds all parts. Whether a set holds them is asked set by set,
 * cheapest first: column generation on these boards alone. Prices under which a set falls short are a cut for every other set
 * (Benders' decomposition over the boards taken); a set that holds the parts only in part is settled by branch and
 * price on its few boards. The first set that holds them is the best there is, since all cheaper ones are refuted.
 * Yields between steps. Ends when the bound meets the cutoff, the work is spent, or a set stays undecided and nothing cheaper is left.
 * @param learnt begins with the cuts of the root's column generation; grows, and serves a later search as well
 */
export function* searchBoards(
  instance: Instance,
  store: Store,
  { cuts, refuted }: Learnt,
  floor: number,
  limits: BoardLimits,
  watch: BoardWatch,
): Generator<void, void, void> {
  const search: Search = { instance, store, cuts, refuted, aside: [], limits, watch };
  const cost = instance.groups.map((group) => group.cost);
  const { copies } = wholeRest(instance);
  let known = floor;
  let undecided = Infinity;
  while (instance.meter.spent < limits.until) {
    const cutoff = watch.cutoff();
    instance.meter.spent += workPerCut * (cuts.length + 1) * copies.length * 50;
    const { set, isExact } = cheapestBoards({
      cost,
      copies,
      cuts,
      refuted: [...refuted, ...search.aside],
      cutoff,
      floor: known,
      mostNodes,
    });
    if (isExact) known = Math.max(known, set?.bound ?? cutoff);
    watch.raise(Math.min(known, cutoff, undecided));
    yield;
    if (set === null) return;
    const learnt = cuts.length + refuted.length + search.aside.length;
    const isSettled = yield* settle(search, set);
    if (!isSettled) undecided = Math.min(undecided, set.bound);
    const isMet = watch.cutoff() <= set.bound + slackOf(set.bound);
    if (isMet) watch.raise(Math.min(known, undecided));
    // A set met again with nothing learnt would be met for ever.
    if (isMet || (cuts.length + refuted.length + search.aside.length === learnt && watch.cutoff() === cutoff))
      return;
  }
}

/** Looks at one set: adds a cut, a refutation or a plan. False when it stays undecided. */
function* settle(search: Search, set: BoardSet): Generator<void, boolean, void> {
  const { instance, store, cuts, limits, watch } = search;
  const here = onBoards(instance, store, set.copies, false);
  const paid = set.copies.reduce(
    (sum, count, g) => sum + count * (1 - shareLeft) * instance.groups[g]!.cost,
    0,
  );
  const room = (): number => watch.cutoff() - paid;
  const found = yield* solveNode(here.instance, wholeRest(here.instance), here.store, [], {
    rounds: 60,
    enough: room(),
    until: limits.until,
    capped: false,
    counts: true,
  });
  keepLearnt(store, here);
  const slack = slackOf(set.bound);
  const cut = found.cuts.at(-1);
  if (cut !== undefined && paid + found.bound > set.bound + slack) {
    cuts.push(cutForAll(search, here, cut));
    if (limits.dives && cuts.length % diveEvery === 0) yield* diveAround(search, set, found, limits.until);
    return true;
  }
  const offer = (plan: Plan): void => offerBack(search, here, plan);
  const until = Math.min(limits.until, instance.meter.spent + limits.workPerSet);
  if (limits.dives) {
    const columns = yield* diveOn(here, found, { first: 3, later: 5, until, fine: true });
    offer(planOf(here.instance, columns));
    if (watch.cutoff() <= set.bound + slack) return true;
    yield* diveAround(search, set, found, until);
  }
  let least = found.bound;
  yield* branchAndPrice(
    here.instance,
    here.store,
    rootNode(here.instance, found.bound),
    until,
    {
      offer,
      cutoff: room,
      raise: (bound) => (least = Math.max(least, bound)),
    },
    true,
  );
  keepLearnt(store, here);
  // What the boards still cost when used is in their full cost already.
  const left = (shareLeft / (1 - shareLeft)) * paid;
  if (least <= set.bound - paid + slack) {
    // Nothing learnt: the set is laid aside at the bound it has.
    search.aside.push({ copies: set.copies, least: Math.max(least, room()) - left });
    return watch.cutoff() <= set.bound + slack;
  }
  search.refuted.push({ copies: set.copies, least: least - left });
  return true;
}

function offerBack({ instance, watch }: Search, here: OnBoards, plan: Plan): void {
  watch.offer(planOf(instance, withoutSurplus(instance, backToWhole(here, plan.columns))));
}

/** A dive on these boards, the copies of alternatives made about as the node's master makes them. */
function diveOn(
  { instance, store }: OnBoards,
  { answer }: NodeAnswer,
  limits: DiveLimits,
): Generator<void, Column[], void> {
  const fixed = withWaysFixed(instance, roundedCopies(instance, sharesOf(instance, answer.made)));
  return dive(fixed, wholeRest(fixed), store.pool, limits);
}

/** A layout on the set's boards and, where these do not do, a few more: seldom far from the best. */
function* diveAround(
  search: Search,
  set: BoardSet,
  found: NodeAnswer,
  until: number,
): Generator<void, void, void> {
  const around = onBoards(search.instance, search.store, set.copies, true);
  const columns = yield* diveOn(around, found, { first: 1, later: 3, until, fine: false });
  offerBack(search, around, planOf(around.instance, columns));
}

/** The cut that refutes a set, with the worth of all other boards at the same prices. */
function cutForAll(
  { instance, store }: Search,
  { groups }: OnBoards,
  { least, worth, price }: BoardCut,
): BoardCut {
  const others = [...instance.groups.keys()].filter(
    (g) => !groups.includes(g) && instance.groups[g]!.copies > 0,
  );
  const answers = boundBoards(
    instance,
    others.map((group) => {
      const { pricer, claims } = instance.groups[group]!;
      const here = price.map((each, k) => each - claims[k]!);
      const counted = countedOn(store.counted, pricer, wholeRest(instance).demand);
      return { group, worth: here, target: 0, slack: 0, counted };
    }),
  );
  const all = new Float64Array(instance.groups.length);
  groups.forEach((g, index) => (all[g] = worth[index]!));
  others.forEach((g, i) => (all[g] = Math.max(0, answers[i]!.bound)));
  return { least, worth: all, price };
}
