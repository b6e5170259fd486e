import { type Random, uniform, whole } from '../../../base/random/random.ts';
import { type Laid, addedBy, lay, leastAdding, takeUp } from './laid.ts';

/** Boards laid anew, at most, for pieces a move lays out too often, and for pieces it leaves open. */
const mostAnew = 2;

/** Temperature at the start and at the end, in money. */
export interface Cooling {
  readonly from: number;
  readonly to: number;
}

/** A move under way: how much dearer it is so far, and what to put back if it is not gone on from. */
interface Move {
  added: number;
  readonly slots: number[];
  readonly before: number[];
}

function change(laid: Laid, move: Move, slot: number, choose: () => number): void {
  const before = laid.chosen[slot]!;
  takeUp(laid, slot);
  move.added -= addedBy(laid, before);
  const column = choose();
  move.added += addedBy(laid, column);
  lay(laid, slot, column);
  if (column === before) return;
  move.slots.push(slot);
  move.before.push(before);
}

function putBack(laid: Laid, { slots, before }: Move): void {
  for (let i = slots.length - 1; i >= 0; i -= 1) {
    takeUp(laid, slots[i]!);
    lay(laid, slots[i]!, before[i]!);
  }
}

/** The kind of a column of which most money's worth is laid out too often; −1: none is. */
function mostSurplus({ table, left, price }: Laid, column: number): number {
  let most = 0;
  let found = -1;
  for (let e = table.at[column]!; e < table.at[column + 1]!; e += 1) {
    const kind = table.kind[e]!;
    if (-left[kind]! * price[kind]! <= most) continue;
    most = -left[kind]! * price[kind]!;
    found = kind;
  }
  return found;
}

/** A kind of a column that is open now, the dearer the likelier; −1: none is. */
function someOpen({ table, left, price }: Laid, column: number, random: Random): number {
  let most = 0;
  let found = -1;
  for (let e = table.at[column]!; e < table.at[column + 1]!; e += 1) {
    const kind = table.kind[e]!;
    if (left[kind]! <= 0) continue;
    const score = price[kind]! * uniform(random);
    if (score <= most) continue;
    most = score;
    found = kind;
  }
  return found;
}

function slotOf({ slots, firstSlot, table }: Laid, column: number, random: Random): number {
  const { group } = table.columns[column]!;
  const from = firstSlot[group]!;
  const until = firstSlot[group + 1]!;
  return until - from === 1 ? from : Math.min(slots.length - 1, whole(random, from, until - 1));
}

/**
 * One move: a column drawn is laid on its board, or taken up if it lies there. Boards that hold what is then laid out too
 * often, and boards that could hold what was taken up, get the column that is best now.
 */
function moveOnce(laid: Laid, random: Random): Move {
  const { table, chosen } = laid;
  const move: Move = { added: 0, slots: [], before: [] };
  const drawn = whole(random, 0, table.columns.length - 1);
  const slot = slotOf(laid, drawn, random);
  const before = chosen[slot]!;
  const column = before === drawn ? -1 : drawn;
  change(laid, move, slot, () => column);
  for (let n = 0; n < mostAnew && column >= 0; n += 1) {
    const kind = mostSurplus(laid, column);
    const others = kind < 0 ? [] : laid.holders[kind]!;
    if (others.length < 2) break;
    const other = others[whole(random, 0, others.length - 1)]!;
    if (other !== slot) change(laid, move, other, () => leastAdding(laid, other));
  }
  for (let n = 0; n < mostAnew && before >= 0; n += 1) {
    const kind = someOpen(laid, before, random);
    if (kind < 0) break;
    const holding = table.holding[kind]!;
    const other = slotOf(laid, holding[whole(random, 0, holding.length - 1)]!, random);
    if (other !== slot) change(laid, move, other, () => leastAdding(laid, other));
  }
  return move;
}

/** What is laid, and what is open, in money. */
function costOf({ table, chosen, left, price }: Laid): number {
  let sum = 0;
  for (const column of chosen) if (column >= 0) sum += table.cost[column]!;
  left.forEach((open, kind) => (sum += Math.max(0, open) * price[kind]!));
  return sum;
}

/**
 * Simulated annealing over which column lies on which board (Kirkpatrick, Gelatt and Vecchi 1983), each move a chain of
 * exchanges: a column put in alone would nearly always lay out twice what lies elsewhere already.
 * Yields after each thousand moves.
 * @param laid where to begin; changed
 * @returns the columns of the cheapest state met, open pieces priced in
 */
export function* exchangeColumns(
  laid: Laid,
  moves: number,
  { from, to }: Cooling,
  random: Random,
): Generator<void, Int32Array, void> {
  let cost = costOf(laid);
  let least = cost;
  let best = laid.chosen.slice();
  if (laid.table.columns.length === 0 || from <= 0) return best;
  for (let done = 0; done < moves; done += 1) {
    if (done % 1000 === 0 && done > 0) yield;
    const temperature = from * (to / from) ** (done / moves);
    const move = moveOnce(laid, random);
    if (move.added > 0 && uniform(random) >= Math.exp(-move.added / temperature)) {
      putBack(laid, move);
      continue;
    }
    cost += move.added;
    if (cost >= least - 1e-9) continue;
    least = cost;
    best = laid.chosen.slice();
  }
  return best;
}
