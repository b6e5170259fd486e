import { nextOffer, pushStep, takeOffer } from '../stairs.ts';
import { activate } from '../frame.ts';
import type { CountedPricing } from './counted-frame.ts';

/** A row as it stands, by use: worth of its pieces so far (−1: none with that use), and the label of its last step (−1: none yet). */
interface Standing {
  readonly worth: Float64Array;
  readonly label: Int32Array;
  /** Most worth of the pieces offered at one place, by use: a longer piece of no more worth is none. */
  readonly most: Float64Array;
}

/** Whether something that uses no more is worth as much. */
function isBeaten(worth: Float64Array, less: readonly number[], value: number): boolean {
  for (let i = 0; i < less.length; i += 1) if (worth[less[i]!]! >= value) return true;
  return false;
}

/** Offers what a piece of each length, started at position p behind the row of one use, makes of it. */
function offerPieces(
  { pricing, counting, memory }: CountedPricing,
  count: number,
  p: number,
  use: number,
  standing: Standing,
  until: number,
): void {
  const { active, activeWorth } = pricing.memory;
  const { table, ids } = pricing.bands.groups;
  const { next } = pricing.raster;
  const { uses, sum, less } = counting;
  const { optionWorth, offers, anyOffer, lastStart, lastLabel, lastOption, lastUse } = memory;
  const n = pricing.raster.xs.length;
  const { most } = standing;
  most.fill(0);
  for (let a = 0; a < count; a += 1) {
    if (activeWorth[a]! <= most[0]!) continue;
    const g = active[a]!;
    const behind = next[table[g]! + p]!;
    if (behind < 0 || behind > until) return;
    const id = p >= table[g + 2]! && p < table[g + 3]! ? ids[p + table[g + 4]!]! : table[g + 1]!;
    for (let more = 0; more < uses; more += 1) {
      const gain = optionWorth[id * uses + more]!;
      if (gain <= most[more]! || isBeaten(most, less[more]!, gain)) continue;
      most[more] = gain;
      const all = sum[use * uses + more]!;
      if (all < 0) continue;
      const total = standing.worth[use]! + gain;
      const { worth, marks } = offers[all]!;
      if (total <= worth[behind]!) continue;
      worth[behind] = total;
      const bit = 1 << (behind & 31);
      marks[behind >> 5] = marks[behind >> 5]! | bit;
      anyOffer[behind >> 5] = anyOffer[behind >> 5]! | bit;
      const label = all * n + behind;
      lastStart[label] = p;
      lastLabel[label] = standing.label[use]!;
      lastOption[label] = id;
      lastUse[label] = more;
    }
  }
}

/** Takes the offer to one use at position q, if there is one; says whether the row rises by it. */
function takeRise(
  { pricing, counting, memory }: CountedPricing,
  q: number,
  use: number,
  standing: Standing,
): boolean {
  const offers = memory.offers[use]!;
  if ((offers.marks[q >> 5]! & (1 << (q & 31))) === 0) return false;
  const worth = takeOffer(offers, q);
  if (worth <= standing.worth[use]! || isBeaten(standing.worth, counting.less[use]!, worth)) return false;
  standing.worth[use] = worth;
  standing.label[use] = use * pricing.raster.xs.length + q;
  const row = memory.making[use]!;
  row.at[row.count] = q;
  row.value[row.count] = worth;
  row.count += 1;
  return true;
}

/** As fillRow, a staircase for each use. A step that is worth no more than one that uses less is left out. */
export function fillCountedRow(counted: CountedPricing, band: number, start: number, until: number): void {
  const { pricing, counting, memory } = counted;
  const { uses, less } = counting;
  const { anyOffer } = memory;
  const { wakes, wakesFrom } = pricing.bands.lists;
  const lastWake = wakesFrom[band + 1]!;
  const standing: Standing = {
    worth: new Float64Array(uses).fill(-1),
    label: new Int32Array(uses).fill(-1),
    most: new Float64Array(uses),
  };
  standing.worth[0] = 0;
  for (const row of memory.making) row.count = 0;
  let wake = wakesFrom[band]!;
  let work = 0;
  const count = until > start ? activate(pricing, band) : 0;
  if (until > start) offerPieces(counted, count, start, 0, standing, until);
  for (let p = start; p < until;) {
    while (wake < lastWake && wakes[wake]! <= p) wake += 1;
    const due = wake < lastWake ? wakes[wake]! : Infinity;
    const next = nextOffer(anyOffer, p + 1);
    const q = next >= 0 && next < due ? next : due;
    if (q === Infinity) break;
    anyOffer[q >> 5] = anyOffer[q >> 5]! & ~(1 << (q & 31));
    work += uses / 8;
    for (let use = 0; use < uses; use += 1) {
      const rises = takeRise(counted, q, use, standing);
      const here = standing.worth[use]!;
      if (!rises && (q !== due || here < 0 || isBeaten(standing.worth, less[use]!, here))) continue;
      work += 4 + count / 2;
      offerPieces(counted, count, q, use, standing, until);
    }
    p = q;
  }
  keepRow(counted, band);
  pricing.meter.spent += 2 * work;
}

function keepRow({ counting, memory }: CountedPricing, band: number): void {
  memory.making.forEach(({ at, value, count }, use) => {
    memory.rowFrom[band * counting.uses + use] = memory.rows.end;
    for (let k = 0; k < count; k += 1) pushStep(memory.rows, at[k]!, value[k]!);
    memory.rowTo[band * counting.uses + use] = memory.rows.end;
  });
}

/** As fillRows. */
export function fillCountedRows(counted: CountedPricing, start: number): void {
  const { bands, memory } = counted.pricing;
  counted.memory.rows.end = 0;
  const { clearBand, clearFrom } = bands.lists;
  for (let b = 0; b < bands.count; b += 1) {
    const clear = clearBand[b]!;
    memory.alias[b] = start >= clearFrom[b]! ? clear : b;
    if (memory.alias[b] === b) fillCountedRow(counted, b, start, memory.until[clear]!);
  }
}
