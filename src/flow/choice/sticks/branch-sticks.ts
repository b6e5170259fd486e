import { allLoads } from '../../patterns/knapsack/all-loads.ts';
import { fillSuffixTable } from '../../patterns/knapsack/suffix-table.ts';
import type { Meter } from '../../patterns/meter.ts';
import { type BannedArcs, type Flow, ban, fixArcs, flowOf, orderAlike } from './arcs.ts';
import { type CoverSet, exactCover } from './exact-cover.ts';
import { type Point, type StickSolve, generateSticks } from './generate-sticks.ts';
import { type SinglePieces, parted, pooled, singlePieces } from './single-pieces.ts';
import { type Restriction, type StickMaster, mostSlack, openStickMaster } from './stick-master.ts';
import { type StickPricer, openStickPricer } from './stick-pricer.ts';
import { type Pattern, type Sticks, raised, wholeRemainder } from './sticks.ts';

export interface BranchOptions {
  /** A plan dearer than this is of no use. */
  readonly target: () => number;
  readonly offer: (patterns: readonly Pattern[]) => void;
  readonly raise: (bound: number) => void;
  readonly until: number;
  /** The whole job's bound, and the prices that gave it. */
  readonly bound: number;
  readonly center: Point;
  readonly incumbent: readonly Pattern[];
}

interface Node {
  readonly at: Restriction;
  /** The node is worked out on a fork of this. */
  readonly parent: StickMaster;
  readonly center: Point;
  readonly bound: number;
}

/** More pieces than this are not told apart. */
const mostPieces = 320;

/** Whether pieces and lengths are few enough for branchSticks. */
export function canBranch(sticks: Sticks, pricer: StickPricer): boolean {
  return pricer.table.step === 1 && sticks.demand.reduce((sum, count) => sum + count, 0) <= mostPieces;
}

/** Distance from a whole number below which a use counts as whole: demands are nudged by less. */
export const useTolerance = 1e-4;

/** Where the two children of a node part. */
type Parting =
  | { readonly kind: 'stock'; readonly stock: number; readonly use: number }
  | { readonly kind: 'arc'; readonly piece: number; readonly left: number };

/** The fractional use of a stock where there are several (of one, the cost says all), else the fractional arc of the longest pieces that is most undecided; null when none is. */
function partingOf(sticks: Sticks, flow: Flow): Parting | null {
  const several = sticks.stocks.length > 1;
  const stock = flow.stocks.findIndex((use) => several && Math.abs(use - Math.round(use)) > useTolerance);
  if (stock >= 0) return { kind: 'stock', stock, use: flow.stocks[stock]! };
  let best: Parting | null = null;
  let score = 0;
  flow.arcs.forEach((uses, piece) => {
    for (const [left, use] of uses) {
      if (use < useTolerance || use > 1 - useTolerance) continue;
      const here = use * (1 - use) * sticks.lengths[piece]!;
      if (here <= score) continue;
      score = here;
      best = { kind: 'arc', piece, left };
    }
  });
  return best;
}

/** Patterns along whole arcs: from each stick's end on, whatever piece begins there, each once. */
function traced(sticks: Sticks, flow: Flow): Pattern[] {
  const at = new Map<number, number[]>();
  flow.arcs.forEach((uses, piece) => {
    for (const [left, use] of uses) if (use > 0.5) at.set(left, [...(at.get(left) ?? []), piece]);
  });
  const patterns: Pattern[] = [];
  flow.stocks.forEach((use, stock) => {
    for (let stick = Math.round(use); stick > 0; stick -= 1) {
      const kinds: number[] = [];
      let left = sticks.stocks[stock]!.length;
      for (let piece = at.get(left)?.pop(); piece !== undefined; piece = at.get(left)?.pop()) {
        kinds.push(piece);
        left -= sticks.lengths[piece]!;
      }
      kinds.sort((a, b) => a - b);
      if (kinds.length > 0) patterns.push({ stock, kinds, counts: kinds.map(() => 1) });
    }
  });
  return patterns;
}

function childrenOf(
  sticks: Sticks,
  width: number,
  at: Restriction,
  parting: Parting,
): [Restriction, Restriction] {
  if (parting.kind === 'stock') {
    const { stock, use } = parting;
    const copies = at.rest.copies.slice();
    copies[stock] = Math.floor(use);
    const least = sticks.stocks.map((_, g) => (g === stock ? Math.ceil(use) : (at.least[g] ?? 0)));
    return [
      { ...at, least },
      { ...at, rest: { demand: at.rest.demand, copies } },
    ];
  }
  const { piece, left } = parting;
  const here: BannedArcs = [...at.banned];
  ban(here, width, piece, (other) => other !== left);
  orderAlike(sticks, width, here);
  const elsewhere: BannedArcs = [...at.banned];
  ban(elsewhere, width, piece, (other) => other === left);
  orderAlike(sticks, width, elsewhere);
  return [
    { ...at, banned: here },
    { ...at, banned: elsewhere },
  ];
}

function rootOf(single: SinglePieces, options: BranchOptions): Node {
  const { sticks, kindOf } = single;
  const master = openStickMaster(sticks);
  for (const pattern of parted(single, options.incumbent)) master.add(pattern);
  const { kind, stock, fixed } = options.center;
  return {
    at: {
      rest: wholeRemainder(sticks),
      banned: [],
      least: [],
    },
    parent: master,
    center: { kind: Float64Array.from(kindOf, (k) => kind[k]!), stock, fixed },
    bound: -Infinity,
  };
}

/** Patterns that a node may have left to be searched one by one, and steps of that search. */
const mostLoads = 6000;
const coverSteps = 1e6;
const coverStepsOfMany = 2e5;
const manyLoads = 450;

/**
 * When few patterns are cheap enough, a search over plans made of them alone: all that cost no more than the bound
 * and the gap are. Null when there are too many.
 */
function coverNode(
  { sticks, pricer, meter }: StickSolve,
  at: Restriction,
  point: Point,
  gap: number,
  target: number,
): { readonly patterns: Pattern[] | null; readonly complete: boolean } | null {
  const { table } = pricer;
  fillSuffixTable(table, point.kind, at.rest.demand, meter, at.banned);
  const sets: CoverSet[] = [];
  for (const [g, stock] of sticks.stocks.entries()) {
    if (at.rest.copies[g]! <= 0) continue;
    const even = stock.cost + point.stock[g]!;
    const least = even - gap - 1e-7;
    const loads = allLoads(
      table,
      point.kind,
      at.rest.demand,
      stock.length,
      least,
      mostLoads,
      meter,
      at.banned,
    );
    if (loads === null) return null;
    for (const items of loads) {
      const worth = items.reduce((sum, piece) => sum + point.kind[piece]!, 0);
      sets.push({ items, share: Math.max(0, even - worth), cost: stock.cost, stock: g });
    }
    if (sets.length > mostLoads) return null;
  }
  sets.sort((a, b) => a.share - b.share);
  const answer = exactCover(
    { items: sticks.lengths.length, sets, budget: gap + 1e-6, money: target + 1e-9, copies: at.rest.copies },
    sets.length > manyLoads ? coverStepsOfMany : coverSteps,
  );
  meter.spent += answer.steps;
  const patterns =
    answer.chosen?.map((s) => {
      const { items, stock } = sets[s]!;
      return { stock, kinds: items, counts: items.map(() => 1) };
    }) ?? null;
  return { patterns, complete: answer.complete };
}

/**
 * Branch and price on arcs: every piece is told apart, and a node either fixes where in its stick a piece begins or
 * bans it from there (Valério de Carvalho 1999, here with patterns as columns); arcs too dear for the target are
 * banned at every node. Depth first, the fixing child first. Raises the bound when the search ends.
 * Only where canBranch.
 */
export function* branchSticks(
  whole: Sticks,
  meter: Meter,
  options: BranchOptions,
): Generator<void, void, void> {
  const single = singlePieces(whole);
  const { sticks } = single;
  const solve: StickSolve = { sticks, meter, pricer: openStickPricer(sticks, meter) };
  const { width } = solve.pricer.table;
  const root = rootOf(single, options);
  const fixed: BannedArcs = [];
  fixArcs(sticks, solve.pricer, root.at, root.center, options.target() - options.bound, fixed, meter);
  orderAlike(sticks, width, fixed);
  const open: Node[] = [{ ...root, at: { ...root.at, banned: fixed } }];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (raised(sticks, node.bound) > options.target() + 1e-9) continue;
    const master = node.parent.fork();
    const limits = {
      cutoff: options.target() + (sticks.whole ? 1 : 1e-9),
      enough: -Infinity,
      until: options.until,
      center: node.center,
      sharp: true,
    };
    const { duals, bound, proof } = yield* generateSticks(solve, master, node.at, limits);
    if (meter.spent > options.until) return;
    if (duals === null || raised(sticks, bound) > options.target() + 1e-9) continue;
    const flow = flowOf(sticks, duals);
    const parting = partingOf(sticks, flow);
    if (parting === null) {
      options.offer(traced(sticks, flow).map((pattern) => pooled(single, pattern)));
      // Whole, but the bound does not say so: the arithmetic failed, and the search cannot be called complete.
      if (duals.objective > raised(sticks, bound) * (1 + mostSlack) + useTolerance) return;
      continue;
    }
    const banned: BannedArcs = [...node.at.banned];
    fixArcs(sticks, solve.pricer, node.at, proof, options.target() - bound, banned, meter);
    orderAlike(sticks, width, banned);
    const covered = coverNode(
      solve,
      { ...node.at, banned },
      proof,
      options.target() - bound,
      options.target(),
    );
    if (covered !== null && covered.patterns !== null) {
      options.offer(covered.patterns.map((pattern) => pooled(single, pattern)));
      open.push(node);
      continue;
    }
    if (covered !== null && covered.complete) continue;
    const [first, second] = childrenOf(sticks, width, { ...node.at, banned }, parting);
    for (const at of [second, first]) open.push({ at, parent: master, center: proof, bound });
  }
  options.raise(raised(sticks, options.target()) + (sticks.whole ? 1 : 0));
}
