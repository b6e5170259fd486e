import { type Memory, type Pricing, activate } from './frame.ts';
import { nextOffer, pushStep, takeOffer } from './stairs.ts';

/** Whether the row whose last step is at `step` (−1: none) can take the option's pieces and stay within the caps. */
function rowTakes(memory: Memory, caps: Int32Array, step: number, option: number): boolean {
  const { stacks, lastOption, lastStep } = memory;
  const wanted = stacks[option]!.pieces;
  for (let w = 0; w < wanted.length; w += 1) {
    const { kind } = wanted[w]!;
    let count = 0;
    for (let v = 0; v < wanted.length; v += 1) if (wanted[v]!.kind === kind) count += 1;
    for (let at = step; at >= 0; at = lastStep[at]!) {
      const pieces = stacks[lastOption[at]!]!.pieces;
      for (let v = 0; v < pieces.length; v += 1) if (pieces[v]!.kind === kind) count += 1;
    }
    if (count > caps[kind]!) return false;
  }
  return true;
}

/** A row as it stands: worth of its pieces so far, and where its last step is (−1: none yet). */
interface Standing {
  worth: number;
  step: number;
}

/**
 * Offers what a piece of each length, started at position p, makes of the row. A longer piece worth no more than a
 * shorter one is none, and no piece is worth more than where nothing is in the way.
 */
function offerPieces(
  { memory, raster, bands, caps }: Pricing,
  count: number,
  p: number,
  { worth, step }: Standing,
  until: number,
): void {
  const { optionValue, lastStart, lastStep, lastOption, active, activeWorth } = memory;
  const { table, ids } = bands.groups;
  const { next } = raster;
  const { worth: offered, marks } = memory.offers;
  let most = 0;
  for (let a = 0; a < count; a += 1) {
    if (activeWorth[a]! <= most) continue;
    const g = active[a]!;
    const behind = next[table[g]! + p]!;
    if (behind < 0 || behind > until) return;
    const id = p >= table[g + 2]! && p < table[g + 3]! ? ids[p + table[g + 4]!]! : table[g + 1]!;
    const gain = optionValue[id]!;
    if (gain <= most || (caps !== null && !rowTakes(memory, caps, step, id))) continue;
    most = gain;
    const total = worth + gain;
    if (total <= offered[behind]!) continue;
    offered[behind] = total;
    marks[behind >> 5] = marks[behind >> 5]! | (1 << (behind & 31));
    lastStart[behind] = p;
    lastStep[behind] = step;
    lastOption[behind] = id;
  }
}

/**
 * Best rows of one band that start at position `start`, as a staircase: most worth of pieces that end by each position.
 * A piece is started only where the worth has just risen or a defect has just ended: elsewhere the position before does as well.
 * Wood before the first piece may be less than a kerf: the cut that frees the piece then runs partly beside it.
 * O(steps × lengths).
 * @param until no piece ends behind it; −1: none is laid
 */
export function fillRow(pricing: Pricing, band: number, start: number, until: number): void {
  const { memory, bands, meter } = pricing;
  const { rows, offers } = memory;
  const { wakes, wakesFrom } = bands.lists;
  const lastWake = wakesFrom[band + 1]!;
  const count = until > start ? activate(pricing, band) : 0;
  const standing: Standing = { worth: 0, step: -1 };
  memory.rowFrom[band] = rows.end;
  let wake = wakesFrom[band]!;
  let work = 0;
  for (let p = start; p >= 0 && p < until;) {
    work += 4 + count / 2;
    offerPieces(pricing, count, p, standing, until);
    while (wake < lastWake && wakes[wake]! <= p) wake += 1;
    const due = wake < lastWake ? wakes[wake]! : Infinity;
    let risen = -1;
    let q = nextOffer(offers.marks, p + 1);
    for (; q >= 0 && q <= due && risen < 0; q = nextOffer(offers.marks, q + 1)) {
      const worth = takeOffer(offers, q);
      if (worth <= standing.worth) continue;
      standing.worth = worth;
      standing.step = q;
      pushStep(rows, q, worth);
      risen = q;
    }
    p = risen >= 0 ? risen : due === Infinity ? -1 : due;
  }
  memory.rowTo[band] = rows.end;
  meter.spent += (3 * work) / 4;
}

/**
 * Fills the rows of all bands from one start, each as far as the limit of its width in `memory.until`. Behind a band's last
 * defect the clear band of its width stands in.
 */
export function fillRows(pricing: Pricing, start: number): void {
  const { memory, bands } = pricing;
  memory.rows.end = 0;
  const { clearBand, clearFrom } = bands.lists;
  for (let b = 0; b < bands.count; b += 1) {
    const clear = clearBand[b]!;
    memory.alias[b] = start >= clearFrom[b]! ? clear : b;
    if (memory.alias[b] === b) fillRow(pricing, b, start, memory.until[clear]!);
  }
}

/** Fills the rows of the clear bands from the plate's butt end, and lets them stand for all others. */
export function fillClearRows(pricing: Pricing): void {
  const { memory, bands } = pricing;
  memory.rows.end = 0;
  for (let b = 0; b < bands.count; b += 1) {
    memory.alias[b] = bands.lists.clearBand[b]!;
    if (memory.alias[b] === b) fillRow(pricing, b, 0, pricing.raster.xs.length - 1);
  }
}
