import { type Random, random, uniform, whole } from '../../../base/random/random.ts';
import type { Exchange, Exchanged } from './exchange.ts';
import { type Laid, lay, leastAdding, nothingLaid, takeUp } from './laid.ts';

/** Boards laid anew, at most, for pieces a move lays out too often, and for pieces it leaves open. */
const mostAnew = 2;

/**
 * The place, among so many, of the column to be tried: that of a number in [0, 1) to the fourth power, so that the first tenth is drawn in more
 * than half of the moves.
 */
function drawnPlace(random: Random, count: number): number {
  const square = uniform(random) ** 2;
  return Math.floor(count * square * square);
}

/** Moves between steps of the temperature. */
const movesPerStep = 100;

/** Slots that one move may change: the one drawn, and those laid anew for too many pieces and for open ones. */
const mostChanged = 1 + 2 * mostAnew;

/** A move under way: how much dearer it is so far, and what to put back if it is not gone on from. One for all moves, since they are millions. */
interface Move {
  added: number;
  changes: number;
  readonly slots: Int32Array;
  readonly before: Int32Array;
}

function begin(move: Move): void {
  move.added = 0;
  move.changes = 0;
}

/** Takes up what lies in a slot; says what it was. */
function clear(laid: Laid, move: Move, slot: number): number {
  const before = laid.chosen[slot]!;
  move.added -= takeUp(laid, slot);
  return before;
}

/** Lays a column, or none, in a slot just cleared. */
function fill(laid: Laid, move: Move, slot: number, before: number, column: number): void {
  move.added += lay(laid, slot, column);
  if (column === before) return;
  move.slots[move.changes] = slot;
  move.before[move.changes] = before;
  move.changes += 1;
}

/** Lays in a slot what adds least now. */
function layAnew(laid: Laid, move: Move, slot: number): void {
  const before = clear(laid, move, slot);
  fill(laid, move, slot, before, leastAdding(laid, slot));
}

function putBack(laid: Laid, { changes, slots, before }: Move): void {
  for (let i = changes - 1; i >= 0; i -= 1) {
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
  const group = table.group[column]!;
  const from = firstSlot[group]!;
  const until = firstSlot[group + 1]!;
  return until - from === 1 ? from : Math.min(slots.length - 1, whole(random, from, until - 1));
}

/**
 * One move: a column drawn is laid on its board, or taken up if it lies there. Boards that hold what is then laid out too
 * often, and boards that could hold what was taken up, get the column that is best now.
 */
function moveOnce(laid: Laid, order: Int32Array, move: Move, random: Random): void {
  const { table, chosen, slots, holders, held } = laid;
  begin(move);
  const drawn = order[drawnPlace(random, order.length)]!;
  const slot = slotOf(laid, drawn, random);
  const before = chosen[slot]!;
  const column = before === drawn ? -1 : drawn;
  fill(laid, move, slot, clear(laid, move, slot), column);
  for (let n = 0; n < mostAnew && column >= 0; n += 1) {
    const kind = mostSurplus(laid, column);
    if (kind < 0 || held[kind]! < 2) break;
    const other = holders[kind * slots.length + whole(random, 0, held[kind]! - 1)]!;
    if (other !== slot) layAnew(laid, move, other);
  }
  for (let n = 0; n < mostAnew && before >= 0; n += 1) {
    const kind = someOpen(laid, before, random);
    if (kind < 0) break;
    const holding = table.holding[kind]!;
    const other = slotOf(laid, holding[whole(random, 0, holding.length - 1)]!, random);
    if (other !== slot) layAnew(laid, move, other);
  }
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
 * exchanges: a column put in alone would nearly always lay out twice what lies elsewhere already. Columns that are likely are tried
 * most: with those drawn evenly six times the moves come to no better.
 * Yields after each thousand moves.
 */
export function* exchangeColumns({
  columns,
  order,
  copies,
  demand,
  price,
  start,
  moves,
  cooling: { from, to },
  seed,
}: Exchange): Generator<void, Exchanged, void> {
  const laid = nothingLaid(columns, copies, demand, price);
  start.forEach((column, slot) => lay(laid, slot, column));
  const stream = random(seed);
  let cost = costOf(laid);
  let least = cost;
  const best = laid.chosen.slice();
  if (order.length === 0 || from <= 0) return { chosen: best, looks: 0 };
  const move: Move = {
    added: 0,
    changes: 0,
    slots: new Int32Array(mostChanged),
    before: new Int32Array(mostChanged),
  };
  let temperature = from;
  for (let done = 0; done < moves; done += 1) {
    if (done % 1000 === 0 && done > 0) yield;
    if (done % movesPerStep === 0) temperature = from * (to / from) ** (done / moves);
    moveOnce(laid, order, move, stream);
    if (move.added > 0 && uniform(stream) >= Math.exp(-move.added / temperature)) {
      putBack(laid, move);
      continue;
    }
    cost += move.added;
    if (cost >= least - 1e-9) continue;
    least = cost;
    best.set(laid.chosen);
  }
  return { chosen: best, looks: laid.looks };
}
