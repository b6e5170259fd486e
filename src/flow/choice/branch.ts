import { type Column, columnOf } from './column.ts';
import { patternWith } from './exact-pattern.ts';
import { type Rest, addToPool, wholeRest } from './generate.ts';
import type { Instance } from './instance.ts';
import type { GroupRow } from './group-row.ts';
import { type SearchNode, fraction, wholeTolerance } from './search-node.ts';
import { type NodeAnswer, solveNode } from './node.ts';
import type { Store } from './store.ts';
import { type Plan, planOf, withoutSurplus } from './plan.ts';
import { wayChildren } from './branch-ways.ts';
import { withAlternatives } from './ways.ts';

/** Sums over the master's columns: copies used of each group, and pieces of each kind on each group. */
interface Usage {
  readonly copies: Float64Array;
  readonly pieces: readonly Float64Array[];
}

function usageOf(instance: Instance, { answer, columns }: NodeAnswer): Usage {
  const copies = new Float64Array(instance.groups.length);
  const pieces = instance.groups.map(() => new Float64Array(instance.kinds.length));
  columns.forEach((column, c) => {
    const use = answer.use[c]!;
    if (use < 1e-9) return;
    copies[column.group]! += use;
    column.kinds.forEach((kind, i) => (pieces[column.group]![kind]! += use * column.counts[i]!));
  });
  return { copies, pieces };
}

/**
 * The two children of a node: first on a group whose use is fractional (dearest fraction first: it moves the bound
 * most), else on a group's fractional count of a kind. Null when all of these are whole.
 */
function children(
  instance: Instance,
  node: SearchNode,
  { usage, made, bound }: { readonly usage: Usage; readonly made: Float64Array; readonly bound: number },
  boardsArePaid: boolean,
): SearchNode[] | null {
  const next = { ...node, bound, depth: node.depth + 1 };
  if (boardsArePaid) return wayChildren(instance, next, made) ?? pieceChildren(instance, next, usage);
  let group = -1;
  let score = wholeTolerance;
  instance.groups.forEach(({ cost }, g) => {
    const here = fraction(usage.copies[g]!) * (1 + cost);
    if (fraction(usage.copies[g]!) > wholeTolerance && here > score) {
      score = here;
      group = g;
    }
  });
  if (group >= 0) {
    const floor = Math.floor(usage.copies[group]!);
    const copies = node.copies.slice();
    copies[group] = floor;
    const use: GroupRow = { group, kind: -1, sign: -1, perCopy: 0, limit: -(floor + 1) };
    return [
      { ...next, rows: [...node.rows, use] },
      { ...next, copies },
    ];
  }
  return wayChildren(instance, next, made) ?? pieceChildren(instance, next, usage);
}

function pieceChildren(instance: Instance, next: SearchNode, usage: Usage): SearchNode[] | null {
  let most = wholeTolerance;
  let at: { group: number; kind: number } | null = null;
  usage.pieces.forEach((counts, group) =>
    counts.forEach((count, kind) => {
      const { length, width } = instance.kinds[kind]!;
      const here = fraction(count) * length * width;
      if (fraction(count) > wholeTolerance && here > most) {
        most = here;
        at = { group, kind };
      }
    }),
  );
  if (at === null) return null;
  const { group, kind } = at as { group: number; kind: number };
  const floor = Math.floor(usage.pieces[group]![kind]!);
  const few: GroupRow = { group, kind, sign: 1, perCopy: 0, limit: floor };
  const many: GroupRow = { group, kind, sign: -1, perCopy: 0, limit: -(floor + 1) };
  return [many, few].map((row) => ({ ...next, rows: [...next.rows, row] }));
}

/**
 * A node whose sums are all whole: the plan they describe, if each group's counts can be cut as one pattern.
 * Groups used more than once are taken as the master has them. Else why not: a group that is proven not to hold its
 * counts, or null where nobody knows.
 */
function wholePlan(
  instance: Instance,
  rest: Rest,
  store: Store,
  found: NodeAnswer,
  usage: Usage,
  boardsArePaid: boolean,
): Plan | { readonly group: number; readonly counts: Int32Array } | null {
  const columns: Column[] = [];
  for (const [g, group] of instance.groups.entries()) {
    // On a board paid for, a use in part is as good as a whole one.
    const copies = boardsArePaid
      ? Math.ceil(usage.copies[g]! - wholeTolerance)
      : Math.round(usage.copies[g]!);
    if (copies === 0) continue;
    const used = found.columns.flatMap((column, c) => {
      const times = column.group === g ? Math.round(found.answer.use[c]!) : 0;
      return fraction(found.answer.use[c]!) < wholeTolerance ? Array<Column>(times).fill(column) : [];
    });
    const within = used.every((column) => column.kinds.every((k, i) => column.counts[i]! <= rest.demand[k]!));
    if (used.length === copies && within) {
      columns.push(...used);
      continue;
    }
    if (copies > 1) return null;
    const counts = Int32Array.from(usage.pieces[g]!, (count) => Math.round(count));
    const placements = patternWith(group, counts, store.unfit, instance.meter);
    // Of several copies, others could hold what this one does not.
    if (placements === 'unknown' || (placements === 'none' && rest.copies[g]! > 1)) return null;
    if (placements === 'none') return { group: g, counts };
    const column = columnOf(g, placements, group);
    addToPool(store.pool, column);
    columns.push(column);
  }
  return planOf(instance, withoutSurplus(instance, columns));
}

/** Whether the child's last decision was made before: the master bends it a little, and would for ever. */
function repeats({ rows }: SearchNode, parent: SearchNode): boolean {
  if (rows.length === parent.rows.length) return false;
  const last = rows.at(-1);
  return rows
    .slice(0, -1)
    .some(
      ({ group, kind, sign, limit }) =>
        group === last!.group && kind === last!.kind && sign === last!.sign && limit === last!.limit,
    );
}

/** No pattern of the group holds these counts or more: some kind must have one fewer. Together the children are complete. */
function fewerOfOne(
  node: SearchNode,
  { group, counts }: { readonly group: number; readonly counts: Int32Array },
  bound: number,
): SearchNode[] {
  return [...counts.keys()]
    .filter((kind) => counts[kind]! > 0)
    .map((kind) => {
      const few: GroupRow = { group, kind, sign: 1, perCopy: 0, limit: counts[kind]! - 1 };
      return { ...node, rows: [...node.rows, few], bound, depth: node.depth + 1 };
    });
}

/** What the search reports as it goes, and asks. */
export interface SearchWatch {
  /** Called with each plan met. */
  readonly offer: (plan: Plan) => void;
  /** Objective that a node must beat to be worth opening. */
  readonly cutoff: () => number;
  /** Called with the bound of the whole tree when it rises. */
  readonly raise: (bound: number) => void;
  /** Called after a node with its answer and decisions, for heuristics that build on it. */
  readonly after?: (node: SearchNode, found: NodeAnswer) => Generator<void, void, void>;
}

/** Best bound first; of the last two where boards are paid for, since there the question is only whether they hold all. */
function nextOf(open: readonly SearchNode[], boardsArePaid: boolean): number {
  if (boardsArePaid) return open.length - 1;
  let index = 0;
  open.forEach((node, i) => {
    const { bound, depth } = open[index]!;
    if (node.bound < bound || (node.bound === bound && node.depth > depth)) index = i;
  });
  return index;
}

/**
 * Branch and price, best bound first. Branches on copies used of a group, then on how many copies are made in a way, then on
 * pieces of a kind on a group; all are linear in the patterns' counts, so pricing stays the same DP with other prices. A node whose sums are whole but
 * where some board is proven not to hold its counts branches on having one of these fewer. One whose patterns are
 * not found without proof stays in the bound as an open end: the search is then no proof, and says so.
 * @param boardsArePaid the boards cost nothing more, so that only pieces are branched on
 */
export function* branchAndPrice(
  instance: Instance,
  store: Store,
  root: SearchNode,
  until: number,
  watch: SearchWatch,
  boardsArePaid = false,
): Generator<void, void, void> {
  const open: SearchNode[] = [root];
  let ends = Infinity;
  while (instance.meter.spent < until) {
    const lowest = Math.min(Infinity, ...open.map((node) => node.bound));
    watch.raise(Math.min(lowest, ends, watch.cutoff()));
    if (lowest >= watch.cutoff()) return;
    const node = open.splice(nextOf(open, boardsArePaid), 1)[0]!;
    if (node.bound >= watch.cutoff()) continue;
    const at = node.alternatives.length === 0 ? instance : withAlternatives(instance, node.alternatives);
    const here: Rest = { demand: wholeRest(at).demand, copies: node.copies };
    const found = yield* solveNode(at, here, store, node.rows, {
      rounds: 60,
      enough: watch.cutoff(),
      until: Infinity,
      capped: false,
      counts: true,
    });
    const bound = Math.max(node.bound, found.bound);
    if (bound >= watch.cutoff()) continue;
    if (watch.after !== undefined) yield* watch.after(node, found);
    if (bound >= watch.cutoff()) continue;
    if (!found.answer.certified) {
      ends = Math.min(ends, bound);
      continue;
    }
    const usage = usageOf(instance, found);
    const two = children(at, node, { usage, made: found.answer.made, bound }, boardsArePaid);
    if (two !== null) {
      if (two.some((child) => repeats(child, node))) ends = Math.min(ends, bound);
      else open.push(...two);
      continue;
    }
    const plan = wholePlan(at, here, store, found, usage, boardsArePaid);
    if (plan !== null && 'counts' in plan) {
      open.push(...fewerOfOne(node, plan, bound));
      continue;
    }
    if (plan !== null) watch.offer(plan);
    if (plan === null || plan.objective > bound + 1e-7 * (1 + Math.abs(bound))) ends = Math.min(ends, bound);
  }
  const left = Math.min(ends, ...open.map((node) => node.bound));
  watch.raise(Math.min(left, watch.cutoff()));
}
