import { type Column, columnWorth } from '../column.ts';
import { wholeRest } from '../generate.ts';
import type { Instance } from '../instance.ts';
import { type Plan, planOf, withoutSurplus } from '../plan.ts';
import { roundedBound } from '../round-bound.ts';
import { wantedOf } from '../wanted.ts';
import { type PickDuals, type PickMaster, openPickMaster } from './pick-master.ts';

/** Distance from a whole number below which a use counts as whole. */
const wholeTolerance = 1e-6;

export interface PickLimits {
  /** Most work. */
  readonly work: number;
  /** Meter reading that ends it in any case. */
  readonly until: number;
  readonly mostNodes: number;
}

interface Search {
  readonly instance: Instance;
  readonly columns: readonly Column[];
  readonly master: PickMaster;
  readonly demand: Float64Array;
  /** Limits of the ways in force, by alternative. */
  readonly ways: { kind: number; strips: number; least: number; most: number }[][];
  readonly most: Int32Array;
  readonly least: Int32Array;
  /** How often each column is barred by decisions in force. */
  readonly barred: Int32Array;
  readonly taken: Column[];
  readonly cutoff: () => number;
  readonly offer: (plan: Plan) => void;
  readonly until: number;
  readonly mostNodes: number;
  readonly counts: { nodes: number };
}

/** A decision, and its way back. */
interface Move {
  readonly go: () => void;
  readonly back: () => void;
}

/**
 * The cheapest plan among columns that are known, sought by branch and bound over the boards used, then over how often a
 * kind is cut from a board, depth first: the better a plan, the less is left to be searched, since a column whose reduced cost exceeds what lies
 * between the bound and the best plan is in no better one. Yields after each node.
 */
export function* pickColumns(
  instance: Instance,
  columns: readonly Column[],
  cutoff: () => number,
  offer: (plan: Plan) => void,
  limits: PickLimits,
): Generator<void, void, void> {
  const until = Math.min(limits.until, instance.meter.spent + limits.work);
  const root = openPickMaster(instance, columns).solve();
  yield;
  const reduced = columns.map(
    (column) => column.cost + root.groupPrice[column.group]! - columnWorth(column, root.kindPrice),
  );
  const counts = { nodes: 0 };
  for (const share of shares) {
    const room = share * (cutoff() - root.objective);
    const goal = Math.min(cutoff(), root.objective + room);
    const kept = columns.filter((_, c) => reduced[c]! < room);
    let isFound = false;
    const { copies } = wholeRest(instance);
    const search: Search = {
      instance,
      columns: kept,
      master: openPickMaster(instance, kept),
      demand: Float64Array.from(wantedOf(instance, wholeRest(instance)).demand),
      ways: (instance.alternatives ?? []).map(({ ways }) => ways.map((way) => ({ ...way }))),
      most: copies,
      least: new Int32Array(instance.groups.length),
      barred: new Int32Array(kept.length),
      taken: [],
      cutoff: () => Math.min(goal, cutoff()),
      offer(plan) {
        isFound ||= plan.objective < goal;
        offer(plan);
      },
      until,
      mostNodes: limits.mostNodes,
      counts,
    };
    yield* visit(search, 0);
    if (isFound || isSpent(search)) return;
  }
}

/** Shares of what lies between the bound and the best plan within which a better one is sought, one after another. */
const shares = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1];

function isSpent({ instance, until, mostNodes, counts }: Search): boolean {
  return counts.nodes >= mostNodes || instance.meter.spent > until;
}

function* visit(search: Search, spent: number): Generator<void, void, void> {
  const { instance, cutoff, counts } = search;
  if (isSpent(search)) return;
  counts.nodes += 1;
  const found = search.master.solve();
  yield;
  if (roundedBound(instance, spent + found.objective, cutoff()) >= cutoff()) return;
  const moves = movesOf(search, found);
  if (moves === null) {
    const used = search.columns.flatMap((column, c) => Array<Column>(Math.round(found.use[c]!)).fill(column));
    search.offer(planOf(instance, withoutSurplus(instance, [...search.taken, ...used])));
    return;
  }
  for (const { go, back } of moves) {
    go();
    yield* visit(
      search,
      search.taken.reduce((sum, { cost }) => sum + cost, 0),
    );
    back();
  }
}

/** The two ways to go on from a node, the likelier first; null when all uses are whole. */
function movesOf(search: Search, { use, idle, made }: PickDuals): Move[] | null {
  const { instance, columns, most, least, master } = search;
  const copies = idle.slice();
  columns.forEach(({ group }, c) => (copies[group] = copies[group]! + use[c]!));
  let group = -1;
  let score = 0;
  copies.forEach((each, g) => {
    const fraction = each - Math.floor(each);
    if (Math.min(fraction, 1 - fraction) < wholeTolerance) return;
    const here = (fraction < 0.5 ? fraction : 1 - fraction) * (1 + instance.groups[g]!.cost);
    if (here <= score) return;
    score = here;
    group = g;
  });
  if (group >= 0) {
    const floor = Math.floor(copies[group]!);
    const [low, high] = [least[group]!, most[group]!];
    const many: Move = {
      go: () => master.setLeast(group, (least[group] = floor + 1)),
      back: () => master.setLeast(group, (least[group] = low)),
    };
    const few: Move = {
      go: () => master.setMost(group, (most[group] = floor)),
      back: () => master.setMost(group, (most[group] = high)),
    };
    return [many, few];
  }
  return splitWay(search, made) ?? splitPieces(search, use) ?? splitColumn(search, use);
}

/** How many copies are made in a way of which the master makes a fraction: no more, or one more at least. */
function splitWay(search: Search, made: Float64Array): Move[] | null {
  const { instance, ways } = search;
  let score = wholeTolerance;
  let at: { a: number; w: number; row: number; count: number } | null = null;
  let row = -1;
  ways.forEach((list, a) =>
    list.forEach(({ kind, strips, least }, w) => {
      row += 1;
      const count = least + made[row]!;
      const { length, width } = instance.kinds[kind]!;
      const fraction = Math.abs(count - Math.round(count));
      if (fraction < wholeTolerance || fraction * strips * length * width <= score) return;
      score = fraction * strips * length * width;
      at = { a, w, row, count };
    }),
  );
  if (at === null) return null;
  const { a, w, count } = at as { a: number; w: number; row: number; count: number };
  const floor = Math.floor(count);
  const way = ways[a]![w]!;
  const { least, most } = way;
  const { copies } = instance.alternatives![a]!;
  const mayBe = (here: { least: number; most: number }): boolean => {
    const others = ways[a]!.filter((_, i) => i !== w);
    return (
      here.least <= here.most &&
      others.reduce((sum, each) => sum + each.least, here.least) <= copies &&
      others.reduce((sum, each) => sum + each.most, here.most) >= copies
    );
  };
  const few = { least, most: floor };
  const many = { least: floor + 1, most };
  const order = count - floor < 0.5 ? [few, many] : [many, few];
  return order.filter(mayBe).map((here): Move => ({
    go: () => setWay(search, a, w, here),
    back: () => setWay(search, a, w, { least, most }),
  }));
}

function setWay(search: Search, a: number, w: number, limit: { least: number; most: number }): void {
  const { ways, master, demand, instance } = search;
  const way = ways[a]![w]!;
  demand[way.kind] = demand[way.kind]! + way.strips * (limit.least - way.least);
  way.least = limit.least;
  way.most = limit.most;
  const row = ways.slice(0, a).reduce((sum, list) => sum + list.length, 0) + w;
  const fixed = ways[a]!.reduce((sum, each) => sum + each.least, 0);
  master.setDemand(way.kind, demand[way.kind]!);
  master.setWay(row, way.most - way.least);
  master.setCopies(a, Math.max(0, instance.alternatives![a]!.copies - fixed));
}

/** Columns of one board parted by how often they have a kind of which the board has a fraction now. */
function splitPieces(search: Search, use: Float64Array): Move[] | null {
  const { instance, columns, most, barred } = search;
  const kinds = instance.kinds.length;
  const pieces = new Float64Array(instance.groups.length * kinds);
  columns.forEach((column, c) => {
    if (use[c]! < wholeTolerance || most[column.group]! > 1) return;
    column.kinds.forEach((kind, i) => {
      const at = column.group * kinds + kind;
      pieces[at] = pieces[at]! + use[c]! * column.counts[i]!;
    });
  });
  let score = wholeTolerance;
  let at = -1;
  pieces.forEach((count, i) => {
    const { length, width } = instance.kinds[i % kinds]!;
    const fraction = Math.abs(count - Math.round(count));
    if (fraction < wholeTolerance || fraction * length * width <= score) return;
    score = fraction * length * width;
    at = i;
  });
  if (at < 0) return null;
  const [group, kind] = [Math.floor(at / kinds), at % kinds];
  const floor = Math.floor(pieces[at]!);
  const few: number[] = [];
  const many: number[] = [];
  columns.forEach((column, c) => {
    if (column.group !== group) return;
    const i = column.kinds.indexOf(kind);
    (i >= 0 && column.counts[i]! > floor ? many : few).push(c);
  });
  // A board that must be used and is left empty in part: barring nothing would lead nowhere.
  if (few.every((c) => barred[c]! > 0)) return null;
  const moves = [barring(search, few), barring(search, many)];
  return pieces[at]! - floor >= 0.4 ? moves : moves.reverse();
}

function barring({ master, barred }: Search, columns: readonly number[]): Move {
  return {
    go() {
      for (const c of columns) {
        barred[c] = barred[c]! + 1;
        if (barred[c] === 1) master.setBarred(c, true);
      }
    },
    back() {
      for (const c of columns) {
        barred[c] = barred[c]! - 1;
        if (barred[c] === 0) master.setBarred(c, false);
      }
    },
  };
}

/** One more of a column that is used in part, or no more of it; null when all are used wholly. */
function splitColumn(search: Search, use: Float64Array): Move[] | null {
  const { columns, master, demand, most, least, taken } = search;
  let best = -1;
  columns.forEach((_, c) => {
    const fraction = use[c]! - Math.floor(use[c]! + wholeTolerance);
    if (fraction < wholeTolerance) return;
    if (best < 0 || fraction > use[best]! - Math.floor(use[best]! + wholeTolerance)) best = c;
  });
  if (best < 0) return null;
  const column = columns[best]!;
  const change = (sign: number): void => {
    column.kinds.forEach((kind, i) => {
      demand[kind] = demand[kind]! - sign * column.counts[i]!;
      master.setDemand(kind, demand[kind]!);
    });
    const { group } = column;
    master.setMost(group, (most[group] = most[group]! - sign));
    master.setLeast(group, Math.max(0, (least[group] = least[group]! - sign)));
  };
  const take: Move = {
    go() {
      taken.push(column);
      change(1);
    },
    back() {
      taken.pop();
      change(-1);
    },
  };
  return [take, barring(search, [best])];
}
