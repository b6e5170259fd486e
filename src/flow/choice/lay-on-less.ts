import { type Random, uniform } from '../../base/random/random.ts';
import { type Column, columnOf, columnWorth } from './column.ts';
import { type Rest, addToPool } from './generate.ts';
import { areaWorth, tastedWorth } from './greedy.ts';
import type { Instance } from './instance.ts';
import { planOf, restAfter, spend, withoutSurplus } from './plan.ts';
import { type PriceAsk, priceInLots } from './price-together.ts';
import { type Solving, isMet, offerTo } from './standing.ts';

/** Boards taken up at once, at most. */
const mostTakenUp = 3;

/** Tries without less left open, for each board, after which it is begun again. */
const patience = 40;

/** Share of the least left open by which a try may leave more. */
const mayLeaveMore = 0.02;

/** Work of a try beside its patterns. */
const workPerTry = 2e4;

/** Boards laid for less than the best layout, and what they leave open. */
interface Draft {
  readonly columns: readonly Column[];
  readonly cost: number;
  readonly rest: Rest;
  /** What the open pieces are worth, as shares of all pieces' area. */
  readonly open: number;
}

function draftOf(instance: Instance, columns: readonly Column[], area: Float64Array): Draft {
  const rest = restAfter(instance, columns);
  const cost = columns.reduce((sum, column) => sum + column.cost, 0);
  const open = rest.demand.reduce((sum, count, k) => sum + Math.max(0, count) * area[k]!, 0);
  return { columns, cost, rest, open };
}

/** The layout without one of its boards, one that holds little more likely than others. */
function withoutOne(
  instance: Instance,
  columns: readonly Column[],
  area: Float64Array,
  random: Random,
): Draft {
  const held = columns.map((column) => columnWorth(column, area));
  const order = [...columns.keys()].sort((a, b) => held[a]! - held[b]! || a - b);
  const at = order[Math.floor(uniform(random) ** 2 * order.length)]!;
  return draftOf(
    instance,
    columns.filter((_, i) => i !== at),
    area,
  );
}

/** Boards to take up, by their place in the draft. */
function someOf({ columns }: Draft, random: Random): Set<number> {
  const many = Math.min(columns.length, 1 + Math.floor(uniform(random) * mostTakenUp));
  const some = new Set<number>();
  while (some.size < many) some.add(Math.floor(uniform(random) * columns.length));
  return some;
}

/** Boards to lay instead: the same ones in another order, or others that cost no more than `most`. */
function boardsInstead(
  { groups }: Instance,
  same: readonly number[],
  copies: Int32Array,
  most: number,
  random: Random,
): number[] {
  if (groups.length === 1 || uniform(random) < 0.5) return same.slice().sort(() => uniform(random) - 0.5);
  const left = copies.slice();
  const chosen: number[] = [];
  let money = most;
  for (;;) {
    const able = [...groups.keys()].filter((g) => left[g]! > 0 && groups[g]!.cost < money);
    if (able.length === 0 || chosen.length > same.length) return chosen;
    const g = able[Math.floor(uniform(random) * able.length)]!;
    chosen.push(g);
    left[g] = left[g]! - 1;
    money -= groups[g]!.cost;
  }
}

/** Lays what is left on these boards in turn, each as full as it gets by a taste of what pieces are worth. */
function* layOn(
  instance: Instance,
  boards: readonly number[],
  rest: Rest,
  taste: Float64Array,
): Generator<void, Column[], void> {
  const laid: Column[] = [];
  for (const g of boards) {
    const group = instance.groups[g]!;
    const worth = taste.map((each, k) => (rest.demand[k]! > 0 ? each : 0));
    const ask: PriceAsk = {
      pricer: group.pricer,
      how: 'fine',
      worth,
      target: 0,
      slack: 0,
      caps: rest.demand,
    };
    const [answer] = yield* priceInLots(instance.price, [ask]);
    const column = columnOf(g, answer!.pattern?.placements ?? [], group);
    if (column.kinds.length === 0) continue;
    laid.push(column);
    spend(rest, column);
  }
  return laid;
}

/**
 * Looks for a layout on boards that cost less: one board of the best is left out, and its pieces stay open; then again and again a few boards
 * are taken up and laid again with the open pieces among theirs, or cheaper ones in their stead, and what leaves no more
 * open, or hardly more, is gone on from (ruin and recreate: Schrimpf et al. 2000). Where many boards cost the same no try
 * by itself makes a layout cheaper, and only what is left open tells a better one.
 * Yields after each try; ends when the meter passes `until`.
 */
export function* layOnLess(
  { instance, store, standing, stream }: Solving,
  until: number,
): Generator<void, void, void> {
  const { meter } = instance;
  const area = areaWorth(instance);
  const offer = offerTo(standing);
  while (meter.spent < until && !isMet(standing) && standing.best.columns.length > 1) {
    const target = standing.best.objective - 1e-9 * (1 + standing.best.objective);
    let draft = withoutOne(instance, withoutSurplus(instance, standing.best.columns), area, stream);
    let least = draft.open;
    const mostTries = patience * (1 + draft.columns.length);
    for (let tries = 0; tries < mostTries && meter.spent < until && draft.open > 0; tries += 1) {
      meter.spent += workPerTry;
      const some = someOf(draft, stream);
      const kept = draft.columns.filter((_, i) => !some.has(i));
      const rest = restAfter(instance, kept);
      const keptCost = kept.reduce((sum, { cost }) => sum + cost, 0);
      const same = [...some].map((i) => draft.columns[i]!.group);
      const boards = boardsInstead(instance, same, rest.copies, target - keptCost, stream);
      const laid = yield* layOn(instance, boards, rest, tastedWorth(instance, stream));
      const next = draftOf(instance, [...kept, ...laid], area);
      yield;
      for (const column of laid) addToPool(store.pool, column);
      if (next.cost >= target || next.open > draft.open + mayLeaveMore * least * uniform(stream)) continue;
      draft = next;
      if (draft.open < least * (1 - 1e-9)) {
        least = draft.open;
        tries = 0;
      }
    }
    if (draft.open <= 0) offer(planOf(instance, draft.columns));
  }
}
