import { type Random, shuffle, uniform } from '../../base/random/random.ts';
import { type Column, columnOf } from './column.ts';
import { drawBoards } from './draw-boards.ts';
import { type Rest, addToPool, wholeRest } from './generate.ts';
import { areaWorth, tastedWorth } from './greedy.ts';
import type { Instance } from './instance.ts';
import { type Plan, planOf, restAfter, spend, withoutSurplus } from './plan.ts';
import { type PriceAsk, priceInLots } from './price-together.ts';
import { type Solving, isMet, offerTo } from './standing.ts';

/** Boards taken up at once, at most. */
const mostTakenUp = 3;

/** Share of the tries in which the same boards are laid again. */
const shareSame = 0.8;

/** Tries that leave no less open, for each board, after which other boards are drawn. */
const patience = 20;

/** Share of the least left open by which a try may leave more. */
const mayLeaveMore = 0.02;

/** Work of a try beside its patterns. */
const workPerTry = 2e4;

/** Boards laid for less than the best layout, and what they leave open. */
interface Draft {
  readonly columns: readonly Column[];
  readonly cost: number;
  /** What the open pieces are worth, as shares of all pieces' area. */
  readonly open: number;
}

/** @param rest what these columns leave */
function draftOf(columns: readonly Column[], { demand }: Rest, area: Float64Array): Draft {
  const cost = columns.reduce((sum, column) => sum + column.cost, 0);
  const open = demand.reduce((sum, count, k) => sum + Math.max(0, count) * area[k]!, 0);
  return { columns, cost, open };
}

/** Some of the draft's boards, by their places in it. */
function someOf({ columns }: Draft, random: Random): Set<number> {
  const many = Math.min(columns.length, 1 + Math.floor(uniform(random) * mostTakenUp));
  const some = new Set<number>();
  while (some.size < many) some.add(Math.floor(uniform(random) * columns.length));
  return some;
}

/**
 * Lays what is left on these boards in turn, each as full as it gets by a taste of what pieces are worth.
 * @param rest changed: what is left then
 */
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

/** The boards drawn, with the patterns of the layout where it has them, and the others laid with what is open. */
function* begun(
  instance: Instance,
  { columns }: Plan,
  boards: readonly number[],
  area: Float64Array,
  random: Random,
): Generator<void, Draft, void> {
  const toLay = boards.slice();
  const order = withoutSurplus(instance, columns);
  shuffle(random, order);
  const stay = order.filter(({ group }) => {
    const at = toLay.indexOf(group);
    if (at >= 0) toLay.splice(at, 1);
    return at >= 0;
  });
  const rest = restAfter(instance, stay);
  const laid = yield* layOn(instance, toLay, rest, area);
  return draftOf([...stay, ...laid], rest, area);
}

/**
 * Looks for a layout on boards that cost less. Boards that do are drawn, near those of the best; what they leave open
 * is then brought down: again and again a few of them are taken up and laid again with the open pieces among theirs, or others in their
 * stead, and what leaves no more open, or hardly more, is gone on from (ruin and recreate: Schrimpf et al. 2000). Where many boards
 * cost the same no try by itself makes a layout cheaper, and only what is left open tells a better one.
 * Yields after each board asked and after each try; ends when the meter passes `until`.
 */
export function* layOnLess(
  { instance, store, standing, stream }: Solving,
  until: number,
): Generator<void, void, void> {
  const { meter } = instance;
  const area = areaWorth(instance);
  const offer = offerTo(standing);
  while (meter.spent < until && !isMet(standing) && standing.best.columns.length > 1) {
    const { best, bound } = standing;
    meter.spent += workPerTry;
    const target = best.objective - 1e-9 * (1 + best.objective);
    const laidNow = best.columns.map(({ group }) => group);
    const range = { least: bound, most: target };
    const drawn = drawBoards(instance, laidNow, wholeRest(instance).copies, range, stream);
    let draft = yield* begun(instance, best, drawn, area, stream);
    let least = draft.open;
    const mostTries = patience * (1 + draft.columns.length);
    for (let tries = 0; tries < mostTries && meter.spent < until && draft.open > 0; tries += 1) {
      meter.spent += workPerTry;
      const some = someOf(draft, stream);
      const kept = draft.columns.filter((_, i) => !some.has(i));
      const rest = restAfter(instance, kept);
      const same = [...some].map((i) => draft.columns[i]!.group);
      shuffle(stream, same);
      const money = target - kept.reduce((sum, { cost }) => sum + cost, 0);
      const isSame = instance.groups.length === 1 || uniform(stream) < shareSame;
      const boards = isSame
        ? same
        : drawBoards(instance, [], rest.copies, { least: 0, most: money }, stream, same.length + 1);
      const laid = yield* layOn(instance, boards, rest, tastedWorth(instance, stream));
      const next = draftOf([...kept, ...laid], rest, area);
      for (const column of laid) addToPool(store.pool, column);
      yield;
      if (next.cost >= target || next.open > draft.open + mayLeaveMore * least * uniform(stream)) continue;
      draft = next;
      if (draft.open < least * (1 - 1e-9)) {
        least = draft.open;
        tries = 0;
      }
    }
    const isShort = best.missing.some((count) => count > 0);
    if (draft.open <= 0 || isShort) offer(planOf(instance, draft.columns));
  }
}
