import type { Meter } from '../../patterns/meter.ts';
import { fillSuffixTable } from '../../patterns/knapsack/suffix-table.ts';
import type { Point } from './generate-sticks.ts';
import type { Restriction, StickDuals } from './stick-master.ts';
import type { StickPricer } from './stick-pricer.ts';
import type { Sticks } from './sticks.ts';

/**
 * Arcs of single pieces: piece k begins where `left` of its stick is left, patterns being cut longest first. In any
 * plan that cuts each piece once, each piece has exactly one arc.
 */
export interface Arc {
  readonly piece: number;
  readonly left: number;
}

/** Tables in which arcs are banned while a node is worked out; copies are made only of the pieces that change. */
export type BannedArcs = (Float64Array | undefined)[];

/** Forbids an arc from here on. */
export function ban(
  banned: BannedArcs,
  width: number,
  piece: number,
  isOut: (left: number) => boolean,
): void {
  const own = banned[piece]?.slice() ?? new Float64Array(width);
  for (let left = 0; left < width; left += 1) if (isOut(left)) own[left] = -Infinity;
  banned[piece] = own;
}

/**
 * Bans every arc of which no pattern has a reduced cost within `gap`: a plan that uses such a pattern costs more than
 * the bound and the gap together (reduced-cost fixing). The best pattern through an arc is its best way there, the
 * pieces before it, and its best way on, U. Prices must leave no pattern a negative reduced cost.
 * @returns how many arcs of the pieces are left
 */
export function fixArcs(
  sticks: Sticks,
  pricer: StickPricer,
  at: Restriction,
  point: Point,
  gap: number,
  banned: BannedArcs,
  meter: Meter,
): number {
  const { table } = pricer;
  const { width, values } = table;
  fillSuffixTable(table, point.kind, at.rest.demand, meter, banned);
  // F[left]: the most that the pieces before this one can earn on the way to `left`, less the stick's price.
  const reach = new Float64Array(width).fill(-Infinity);
  sticks.stocks.forEach((stock, g) => {
    if (at.rest.copies[g]! <= 0) return;
    reach[stock.length] = Math.max(reach[stock.length]!, -(stock.cost + point.stock[g]!));
  });
  let remaining = 0;
  sticks.lengths.forEach((length, k) => {
    if (at.rest.demand[k]! <= 0) return;
    const own = banned[k]?.slice() ?? new Float64Array(width);
    let changed = banned[k] === undefined;
    const worth = point.kind[k]!;
    for (let left = 0; left < width; left += 1) {
      const here = reach[left]!;
      const isOpen =
        left >= length &&
        here > -Infinity &&
        own[left] === 0 &&
        here + worth + values[(k + 1) * width + left - length]! >= -gap - 1e-7;
      if (!isOpen && own[left] === 0) {
        own[left] = -Infinity;
        changed = true;
      }
      if (isOpen) remaining += 1;
    }
    if (changed) banned[k] = own;
    for (let left = length; left < width; left += 1) {
      if (own[left] !== 0) continue;
      const value = reach[left]! + worth;
      if (value > reach[left - length]!) reach[left - length] = value;
    }
  });
  meter.spent += 3 * width * sticks.lengths.length;
  return remaining;
}

/**
 * Pieces of one length are alike: of two such pieces the first begins where more, or as much, is left. Bans what
 * breaks this order; plans lose nothing.
 */
export function orderAlike(sticks: Sticks, width: number, banned: BannedArcs): void {
  for (let k = 1; k < sticks.lengths.length; k += 1) {
    if (sticks.lengths[k] !== sticks.lengths[k - 1]) continue;
    const before = banned[k - 1];
    if (before === undefined) continue;
    const most = before.lastIndexOf(0);
    const own = banned[k];
    if (own === undefined ? most < width - 1 : own.lastIndexOf(0) > most)
      ban(banned, width, k, (left) => left > most);
  }
  for (let k = sticks.lengths.length - 2; k >= 0; k -= 1) {
    if (sticks.lengths[k] !== sticks.lengths[k + 1]) continue;
    const after = banned[k + 1];
    if (after === undefined) continue;
    const least = after.indexOf(0);
    const own = banned[k];
    if (own === undefined ? least > 0 : own.indexOf(0) < least) ban(banned, width, k, (left) => left < least);
  }
}

/** Use of every arc under the master's answer, by piece; and how many sticks of each stock. */
export interface Flow {
  readonly arcs: readonly Map<number, number>[];
  readonly stocks: Float64Array;
}

/** How much each arc is used by the columns at these uses. */
export function flowOf(sticks: Sticks, duals: StickDuals): Flow {
  const arcs = Array.from(sticks.lengths, () => new Map<number, number>());
  const stocks = Float64Array.from(duals.idle);
  duals.patterns.forEach((pattern, p) => {
    const use = duals.use[p]!;
    if (use < 1e-9) return;
    stocks[pattern.stock] = stocks[pattern.stock]! + use;
    let left = sticks.stocks[pattern.stock]!.length;
    for (const piece of pattern.kinds) {
      arcs[piece]!.set(left, (arcs[piece]!.get(left) ?? 0) + use);
      left -= sticks.lengths[piece]!;
    }
  });
  return { arcs, stocks };
}
