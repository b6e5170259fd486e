import { gathered } from '../../../base/lists/gathered.ts';
import { columnOf } from '../column.ts';
import type { Instance, StockGroup } from '../instance.ts';
import { type Plan, planOf } from '../plan.ts';
import type { Pattern, Sticks } from './sticks.ts';

/** A job of sticks, and the way back to the instance it was read from. */
export interface StickJob {
  readonly sticks: Sticks;
  /** Instance kinds of each length. */
  readonly kinds: readonly (readonly number[])[];
  /** Instance groups of each stock. */
  readonly groups: readonly (readonly number[])[];
  /** One unit of the sticks' cost in money. */
  readonly unit: number;
  /** Money that every plan that lays out all pieces costs beside its sticks: the credit their area loses. */
  readonly fixed: number;
}

/** Money is counted in hundred-thousandths. */
const unitsPerMoney = 1e5;

function divisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

/** The greatest money of which every cost is a whole multiple; 0 when there is none. */
function unitOf(costs: readonly number[]): number {
  const first = costs[0] ?? 0;
  if (costs.every((cost) => cost === first)) return first;
  let unit = 0;
  for (const cost of costs) {
    const whole = Math.round(cost * unitsPerMoney);
    if (Math.abs(whole - cost * unitsPerMoney) > 1e-4) return 0;
    unit = divisor(unit, whole);
  }
  return unit / unitsPerMoney;
}

/** Whether the kind may lie anywhere on the group's board, its grain along it, and fills its width. */
function fillsWidth(group: StockGroup, k: number): boolean {
  const { plate } = group;
  const kind = group.kinds[k]!;
  const shape = kind.shapes[0]!;
  if (kind.shapes.length !== 1 || kind.clearances.length === 0) return false;
  if (shape.width > plate.width || 2 * shape.width + plate.ripKerf <= plate.width) return false;
  if (shape.width < plate.width && (plate.stages === 1 || shape.length < plate.shortestRip)) return false;
  return kind.clearances.every((clearance) => (plate.clearances[clearance] ?? []).length === 0);
}

function isUseless(group: StockGroup): boolean {
  return group.plate.length <= 0 || group.plate.width <= 0 || group.copies <= 0;
}

/**
 * Whether the instance is a job of sticks: every kind lies along every board, anywhere on it, and no two side by side,
 * so that only lengths matter; every piece is to be laid out, and what pieces cost in lost credit is the same on all
 * boards. Pieces narrower than their board must be long enough to rip.
 */
export function isSticks(instance: Instance): boolean {
  const groups = instance.groups.filter((group) => !isUseless(group));
  const first = groups[0];
  if ((instance.alternatives ?? []).length > 0) return false;
  if (first === undefined || instance.kinds.length === 0) return false;
  const all = groups.reduce((sum, group) => sum + Math.max(0, group.cost) * group.copies, 0);
  const narrowest = Math.min(...first.kinds.map((kind) => kind.shapes[0]?.width ?? 0));
  return (
    instance.kinds.every((kind) => kind.strips === 1 && kind.penalty > all) &&
    groups.every(
      (group) =>
        group.cost > 0 &&
        group.rate === first.rate &&
        2 * narrowest + group.plate.ripKerf > group.plate.width &&
        instance.kinds.every((_, k) => fillsWidth(group, k)) &&
        group.kinds.every((kind, k) => kind.shapes[0]!.length === first.kinds[k]!.shapes[0]!.length),
    )
  );
}

/**
 * The job of sticks with one claim for a piece on all boards, the least: what pieces cost in lost credit is then the same
 * wherever they lie, and never too much.
 */
export function levelled(instance: Instance): Instance {
  const useful = instance.groups.filter((group) => !isUseless(group));
  const claims = Float64Array.from(instance.kinds, (_, k) => Math.min(...useful.map((g) => g.claims[k]!)));
  return { ...instance, groups: instance.groups.map((group) => ({ ...group, claims })) };
}

/** Reads the lengths out of an instance for which isSticks holds. Boards that cost and hold the same are one stock. */
export function toSticks(instance: Instance): StickJob {
  const useful = instance.groups.flatMap((group, g) => (isUseless(group) ? [] : [g]));
  const first = instance.groups[useful[0]!]!;
  const lengthOf = (k: number): number => first.kinds[k]!.shapes[0]!.length + first.plate.crosscutKerf;
  const stockLength = (g: number): number => {
    const { plate } = instance.groups[g]!;
    return plate.length + plate.crosscutKerf;
  };
  const unit = unitOf(useful.map((g) => instance.groups[g]!.cost));
  const costOf = (g: number): number => {
    const { cost } = instance.groups[g]!;
    return unit === 0 ? cost : Math.round(cost / unit);
  };
  const kinds = [...gathered(instance.kinds.keys(), lengthOf).values()].sort(
    (a, b) => lengthOf(b[0]!) - lengthOf(a[0]!),
  );
  const groups = [...gathered(useful, (g) => `${stockLength(g)}|${costOf(g)}`).values()];
  const step = kinds.reduce((all, list) => divisor(all, lengthOf(list[0]!)), 0);
  const stocks = groups.map((list) => ({
    // What is left over of a step can hold nothing: all lengths are whole steps.
    length: Math.floor(stockLength(list[0]!) / step),
    cost: costOf(list[0]!),
    copies: list.reduce((sum, g) => sum + instance.groups[g]!.copies, 0),
  }));
  const demand = kinds.map((list) => list.reduce((sum, k) => sum + instance.kinds[k]!.demand, 0));
  const pieces = demand.reduce((sum, count) => sum + count, 0);
  const most = Math.max(...stocks.map((stock) => stock.cost));
  return {
    sticks: {
      lengths: Int32Array.from(kinds, (list) => lengthOf(list[0]!) / step),
      demand: Int32Array.from(demand),
      // Enough that no plan of all pieces costs as much, and small enough to keep the arithmetic sharp.
      penalty: new Float64Array(kinds.length).fill(most * pieces + 1),
      stocks: stocks.map((stock) => ({ ...stock, copies: Math.min(stock.copies, pieces) })),
      whole: unit > 0,
    },
    kinds,
    groups,
    unit: unit === 0 ? 1 : unit,
    fixed: instance.kinds.reduce((sum, { demand }, k) => sum + demand * first.claims[k]!, 0),
  };
}

/** Turns patterns of lengths into columns of the instance: copies of boards and of kinds are handed out in order. */
export function toPlan(instance: Instance, job: StickJob, patterns: readonly Pattern[]): Plan {
  const boards = job.groups.map((list) =>
    list.flatMap((g) =>
      Array.from({ length: Math.min(instance.groups[g]!.copies, patterns.length) }, () => g),
    ),
  );
  const pieces = job.kinds.map((list) =>
    list.flatMap((k) => Array.from({ length: instance.kinds[k]!.demand }, () => k)),
  );
  const usedBoards = job.groups.map(() => 0);
  const usedPieces = job.kinds.map(() => 0);
  const columns = patterns.flatMap((pattern) => {
    const g = boards[pattern.stock]![usedBoards[pattern.stock]!]!;
    usedBoards[pattern.stock] = usedBoards[pattern.stock]! + 1;
    const group = instance.groups[g]!;
    let x = 0;
    const placements = pattern.kinds.flatMap((length, i) =>
      Array.from({ length: pattern.counts[i]! }, () => {
        const k = pieces[length]![usedPieces[length]!];
        if (k === undefined) return [];
        usedPieces[length] = usedPieces[length]! + 1;
        const { shapes, clearances } = group.kinds[k]!;
        const placed = { kind: k, clearance: clearances[0]!, x, y: 0, ...shapes[0]! };
        x += shapes[0]!.length + group.plate.crosscutKerf;
        return [placed];
      }).flat(),
    );
    return placements.length === 0 ? [] : [columnOf(g, placements, group)];
  });
  return planOf(instance, columns);
}
