import { divesAmongWays, hasWays } from './among-ways.ts';
import { mostSlots, searchBoards } from './boards/search-boards.ts';
import { branchAndPrice } from './branch.ts';
import { rootNode } from './search-node.ts';
import { dive } from './dive.ts';
import { layByExchange, movesPerGroup } from './exchange/lay-by-exchange.ts';
import { wholeRest } from './generate.ts';
import { type ImproveLimits, improve } from './improve.ts';
import { type Instance, hasCosts, slotsOf } from './instance.ts';
import { layOnLess } from './lay-on-less.ts';
import { solveNode } from './node.ts';
import { pickColumns } from './pick/pick-columns.ts';
import { planOf } from './plan.ts';
import { type Solving, type Stage, cutoffOf, offerTo, raiseOf } from './standing.ts';
import { sharesOf } from './ways.ts';
import { isFew } from './work.ts';

/** Neighbourhood search up to a share of the budget. */
function* improveUpTo(
  solving: Solving,
  share: number,
  tries: number,
  every: Pick<ImproveLimits, 'diveEvery' | 'solveEvery'>,
): Generator<void, void, void> {
  const { instance, store, standing, stream, budget } = solving;
  const limits = { tries, until: share * budget, ...every };
  yield* improve(instance, standing.best, store, stream, limits, offerTo(standing));
}

/** Nodes of one search for the best choice among known patterns, and its share of the work. */
const mostPicks = 2000;
const shareOfPick = 0.04;

/** Neighbourhood search that takes a share of the budget from where it begins. */
function* improveFor(solving: Solving, share: number): Generator<void, void, void> {
  const from = solving.instance.meter.spent / solving.budget;
  yield* improveUpTo(solving, Math.min(1, from + share), Infinity, often);
}

/** Rounds of exchange that take a share of the budget. */
function* exchangeFor(solving: Solving, share: number): Generator<void, void, void> {
  const { instance, budget } = solving;
  const until = Math.min(budget, instance.meter.spent + share * budget);
  yield* layByExchange({ ...solving, budget: until }, movesPerGroup.usual);
}

/** Relative gap at which the root of a large job is left: the rest of the work goes into layouts. */
const closeEnough = 8e-3;

/** Column generation at the root: the bound of all capped patterns mixed freely, and the patterns it takes. */
function* root(solving: Solving, share: number, close: number, counts: boolean): Generator<void, void, void> {
  const { instance, store, standing, budget } = solving;
  const limits = {
    rounds: 400,
    enough: Infinity,
    close,
    until: share * budget,
    capped: true,
    counts,
  };
  const { bound, cuts, answer } = yield* solveNode(instance, wholeRest(instance), store, [], limits);
  solving.learnt.cuts.push(...cuts);
  solving.mix.shares = sharesOf(instance, answer.made);
  raiseOf(instance, standing)(bound);
}

function* firstDive(
  { instance, store, standing, budget }: Solving,
  share: number,
): Generator<void, void, void> {
  const limits = { first: 2, later: 6, until: share * budget, fine: false };
  offerTo(standing)(planOf(instance, yield* dive(instance, wholeRest(instance), store.pool, limits)));
}

function* prove({ instance, store, standing, budget }: Solving, share: number): Generator<void, void, void> {
  yield* branchAndPrice(instance, store, rootNode(instance, standing.bound), share * budget, {
    offer: offerTo(standing),
    cutoff: cutoffOf(standing),
    raise: raiseOf(instance, standing),
    *after(node) {
      if (node.depth % 3 !== 1) return;
      const rest = { demand: wholeRest(instance).demand, copies: node.copies.slice() };
      offerTo(standing)(
        planOf(
          instance,
          yield* dive(instance, rest, store.pool, { first: 1, later: 3, until: budget, fine: false }),
        ),
      );
    },
  });
}

/** The best choice among the patterns met so far. */
function pick({ instance, store, standing, budget }: Solving): Generator<void, void, void> {
  const limits = { work: shareOfPick * budget, until: budget, mostNodes: mostPicks };
  return pickColumns(instance, store.pool.columns, cutoffOf(standing), offerTo(standing), limits);
}

/** The cheapest set of boards, where there are few enough of them. */
function* proveBoards(
  { instance, store, standing, budget, learnt }: Solving,
  share: number,
  shareOfSet: number,
): Generator<void, void, void> {
  if (slotsOf(instance) > mostSlots || !hasCosts(instance)) return;
  const limits = { until: share * budget, workPerSet: shareOfSet * budget, dives: true };
  yield* searchBoards(instance, store, learnt, standing.bound, limits, {
    offer: offerTo(standing),
    cutoff: cutoffOf(standing),
    raise: raiseOf(instance, standing),
  });
}

/** Layouts on boards that cost less, for a share of the budget. */
function* layOnLessFor(solving: Solving, share: number): Generator<void, void, void> {
  const { instance, budget } = solving;
  yield* layOnLess(solving, Math.min(budget, instance.meter.spent + share * budget));
}

/** Whether a job has few kinds of boards and many copies of them, as a yard sells them. */
function isRepeated(instance: Instance): boolean {
  return isFew(instance) && hasCosts(instance) && slotsOf(instance) >= 2 * instance.groups.length;
}

/**
 * Stages of a job of few kinds of boards and many copies of each: many layouts cost the same, so that those of a set of
 * boards are sought rather than those of another cost.
 */
function stagesOfRepeated(solving: Solving): readonly Stage[] {
  return [
    ['trying fewer boards', layOnLessFor(solving, 0.08)],
    ['finding patterns', root(solving, 0.38, 0, true)],
    ['choosing boards', firstDive(solving, 0.45)],
    ['choosing patterns', pick(solving)],
    ['trying other layouts', exchangeFor(solving, 0.15)],
    ['trying fewer boards', layOnLessFor(solving, 0.04)],
    ['proving', proveBoards(solving, 0.8, 0.08)],
    ['choosing patterns', pick(solving)],
    ['trying other layouts', exchangeFor(solving, 0.05)],
    ['trying fewer boards', layOnLessFor(solving, 0.05)],
    ['proving', proveBoards(solving, 0.95, 0.3)],
    ['proving', prove(solving, 0.95)],
    ['trying other layouts', exchangeFor(solving, 0.03)],
    ['trying fewer boards', layOnLessFor(solving, 1)],
  ];
}

/** The root of a large job, as near as pays. */
export function rootAmongWays(solving: Solving, share: number): Generator<void, void, void> {
  return root(solving, share, closeEnough, false);
}

/** Dives in ways drawn. */
const divesInWays = { few: 6, some: 4 } as const;

/** Stages of a job whose copies may be made in several ways, of at most `mostSlots` boards. */
function stagesAmongWays(solving: Solving): readonly Stage[] {
  const { instance } = solving;
  const isSmall = isFew(instance);
  const often = { diveEvery: 3, solveEvery: isSmall ? 4 : 6 };
  return [
    ['finding patterns', root(solving, 0.35, 0, isSmall)],
    ['choosing boards', divesAmongWays(solving, 0.5, isSmall ? divesInWays.few : divesInWays.some)],
    ['choosing patterns', pick(solving)],
    ['proving', proveBoards(solving, 0.55, isSmall ? 0.3 : 0.08)],
    ['trying other layouts', improveUpTo(solving, 0.7, Infinity, often)],
    ['choosing patterns', pick(solving)],
    ['proving', proveBoards(solving, 0.92, 0.3)],
    ['proving', prove(solving, 0.95)],
    ['improving', improveUpTo(solving, 1, Infinity, often)],
  ];
}

/** The stages of a solve after its first layout, in order. Without effort only those that make it whole and bound it. */
export function stagesOf(solving: Solving, effort: number): readonly Stage[] {
  const { instance } = solving;
  if (hasWays(instance)) {
    if (effort > 0) return stagesAmongWays(solving);
    return [
      ['finding patterns', root(solving, 0.45, 0, isFew(instance))],
      ['choosing boards', divesAmongWays(solving, 0.55, 1)],
    ];
  }
  if (effort > 0 && isRepeated(instance)) return stagesOfRepeated(solving);
  if (effort > 0 && slotsOf(instance) > mostSlots) return stagesOfLarge(solving);
  const base: Stage[] = [
    ['finding patterns', root(solving, 0.45, 0, isFew(instance))],
    ['choosing boards', firstDive(solving, 0.55)],
  ];
  if (effort <= 0) return base;
  if (isFew(instance)) {
    return [
      ...base,
      ['choosing patterns', pick(solving)],
      ['proving', proveBoards(solving, 0.5, 0.3)],
      ['trying other layouts', improveUpTo(solving, 0.8, 8, neverSolve)],
      ['choosing patterns', pick(solving)],
      ['proving', proveBoards(solving, 0.9, 0.3)],
      ['proving', prove(solving, 0.9)],
      ['improving', improveUpTo(solving, 1, Infinity, neverSolve)],
    ];
  }
  return [
    ...base,
    ['choosing patterns', pick(solving)],
    ['trying other layouts', exchangeFor(solving, 0.12)],
    ['choosing patterns', pick(solving)],
    ['proving', proveBoards(solving, 0.7, 0.08)],
    ['trying other layouts', improveFor(solving, 0.06)],
    ['choosing patterns', pick(solving)],
    ['proving', proveBoards(solving, 0.97, 0.3)],
    ['proving', prove(solving, 0.97)],
    ['improving', improveUpTo(solving, 1, Infinity, often)],
  ];
}

/** Of a large job a proof is out of reach: its root is solved nearly, and its layout improved piece by piece. */
function stagesOfLarge(solving: Solving): readonly Stage[] {
  return [
    ['finding patterns', root(solving, 0.75, closeEnough, false)],
    ['choosing boards', firstDive(solving, 0.9)],
    ['improving', improveUpTo(solving, 1, Infinity, { diveEvery: Infinity, solveEvery: 1 })],
  ];
}

const often = { diveEvery: Infinity, solveEvery: 6 };
const neverSolve = { diveEvery: 3, solveEvery: Infinity };
