import { layByExchange, movesPerGroup } from './exchange/lay-by-exchange.ts';
import { keepFound } from './found.ts';
import { firstLayout } from './first-layout.ts';
import { type Rest, wholeRest, worthOn } from './generate.ts';
import { greedy } from './greedy.ts';
import { type Instance, piecesWanted } from './instance.ts';
import { solveNode } from './node.ts';
import { planOf } from './plan.ts';
import { type PriceAsk, priceInLots } from './price-together.ts';
import { boundAt } from './prices/bound-at.ts';
import { closeIn } from './prices/close-in.ts';
import { movePrices } from './prices/move-prices.ts';
import { openingPrices } from './prices/opening-prices.ts';
import { scaleToFine } from './prices/scale-prices.ts';
import { type Solving, type Stage, offerTo, raiseOf } from './standing.ts';

/**
 * With more groups and pieces than this the simplex takes longer than the pricing, and no set of boards could be proven: prices are moved step
 * by step instead. With fewer pieces a master's bound is the better one, since it counts how often a pattern may use them.
 */
const mostForSimplex = { groups: 40, pieces: 40 } as const;

/** Whether a job has so many groups of boards and pieces that it is solved by prices moved step by step. */
export function isByPrices(instance: Instance): boolean {
  return instance.groups.length > mostForSimplex.groups && piecesWanted(instance) > mostForSimplex.pieces;
}

/** Passes in the rough and among all positions, their first steps, and how steps shrink (measured on a week and twice that). */
const roughly = { passes: 11, step: 0.2, decay: 0.8, fine: false } as const;
const finely = { passes: 12, step: 0.05, decay: 0.8, fine: true } as const;

/**
 * With more groups than this listing all positions takes longest: prices are moved among those in play, which a first pass tells
 * from the others. And a board's bound may be too high by a larger share of its cost, or by more where a search takes long.
 */
const mostForFine = 300;
const boundEase = {
  usual: { slack: 2e-3, mostStarts: Infinity },
  quick: { slack: 3e-3, mostStarts: 64 },
} as const;

/** Whether a job has so many groups of boards that listing all their positions takes longest. */
export function isOfVeryMany({ groups }: Instance): boolean {
  return groups.length > mostForFine;
}

/** A board is in play if some pattern of it is worth at least this share of its cost. */
const nearlyPays = 0.9;

/** Passes among all positions of so many boards. */
const fewPasses = 5;

/** By what share of its board's cost a pattern may fall short of the best there. */
const goodEnough = 0.02;

/** The first layout of a job of many boards, at prices moved through all boards once; taken as it stands when it is ended early. */
export function* firstByPrices(solving: Solving, prices: Float64Array): Generator<void, void, void> {
  const { instance, store, stream } = solving;
  const rest = wholeRest(instance);
  prices.set(openingPrices(instance, rest));
  yield* movePrices(instance, rest, store.pool, prices, stream, { ...roughly, passes: 1, until: Infinity });
  yield* firstLayout(solving, prices, { fine: false, fromPool: true });
}

function* findPrices(solving: Solving, prices: Float64Array): Generator<void, void, void> {
  const { instance, store, standing, stream, budget } = solving;
  const rest = wholeRest(instance);
  const start = instance.meter.spent;
  const upTo = (share: number): number => start + share * (budget - start);
  const isQuick = isOfVeryMany(instance);
  yield* movePrices(instance, rest, store.pool, prices, stream, {
    ...roughly,
    until: upTo(isQuick ? 0.12 : 0.2),
  });
  // Until all positions of so many boards are listed a better layout in the rough is worth having.
  if (isQuick) yield* layOutByPrices(solving, prices, false);
  const inPlay = isQuick ? yield* thoseInPlay(solving, rest, prices) : rest;
  scaleToFine(instance, rest, prices);
  yield;
  yield* movePrices(instance, inPlay, store.pool, prices, stream, {
    ...finely,
    ...(isQuick ? { passes: fewPasses } : {}),
    until: upTo(isQuick ? 0.6 : 0.4),
  });
  const ease = isQuick ? boundEase.quick : boundEase.usual;
  const found = yield* boundAt(instance, rest, store.pool, prices, ease);
  store.pool.prices = { kind: prices, group: found.groupPrice };
  raiseOf(instance, standing)(found.bound);
}

/** The rest with only the boards of which some pattern, in the rough, nearly pays at these prices. */
function* thoseInPlay(
  { instance, store }: Solving,
  rest: Rest,
  prices: Float64Array,
): Generator<void, Rest, void> {
  const asks = instance.groups.map(({ pricer, cost }, g): PriceAsk => {
    const worth = worthOn(instance, g, prices, rest);
    return {
      pricer,
      how: 'rough',
      worth,
      target: nearlyPays * cost,
      slack: goodEnough * Math.max(0, cost),
    };
  });
  const answers = yield* priceInLots(instance.price, asks);
  const copies = rest.copies.map((count, g) => (answers[g]!.pattern === null ? 0 : count));
  keepFound(instance, rest, store.pool, [...instance.groups.keys()], answers);
  return { demand: rest.demand, copies };
}

function* layOutByPrices(
  { instance, store, standing }: Solving,
  prices: Float64Array,
  fine: boolean,
): Generator<void, void, void> {
  const way = { fine, fromPool: true };
  offerTo(standing)(planOf(instance, yield* greedy(instance, wholeRest(instance), store.pool, prices, way)));
}

/** With more groups than this even a few solves of a master take too long. */
const mostForMaster = 130;

/** A few exact passes at prices mixed with a master's, or with those of the patterns met where there are too many boards for one: for their bound and their patterns. */
function* boundCloser(solving: Solving): Generator<void, void, void> {
  const { instance, store, standing, budget } = solving;
  const { prices } = store.pool;
  if (prices === null || isOfVeryMany(instance)) return;
  const until = instance.meter.spent + 0.5 * (budget - instance.meter.spent);
  if (instance.groups.length > mostForMaster) return yield* closeIn(solving, boundEase.usual, until);
  const center = { prices: prices.kind, groupPrices: prices.group, bound: standing.bound };
  const rest = wholeRest(instance);
  const { bound } = yield* solveNode(instance, rest, store, [], {
    rounds: 12,
    enough: Infinity,
    close: 3e-4,
    until,
    capped: true,
    counts: false,
    center,
  });
  raiseOf(instance, standing)(bound);
}

/**
 * The stages of a job of many boards. A proof is out of reach: good prices, their bound, a layout by them, improved a few
 * boards at a time. Without effort too, with little work: the layout by prices alone is too dear to begin from.
 */
export function stagesByPrices(solving: Solving, prices: Float64Array): readonly Stage[] {
  const moves = isOfVeryMany(solving.instance) ? movesPerGroup.inFewRounds : movesPerGroup.usual;
  return [
    ['finding patterns', findPrices(solving, prices)],
    ['choosing boards', layOutByPrices(solving, prices, true)],
    ['proving', boundCloser(solving)],
    ['improving', layByExchange(solving, moves)],
  ];
}
