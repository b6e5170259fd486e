import { firstRippable } from '../frame.ts';
import { mergeOffers, stairsAt } from '../stairs.ts';
import type { CountedPricing } from './counted-frame.ts';

/** Offers to a height what the stack below and a row on it make together, where that is more than the height before it has. O(steps). */
function offerStrip(
  { memory }: CountedPricing,
  stack: number,
  row: number,
  at: { readonly before: number; readonly use: number; readonly from: number; readonly isOnNothing: boolean },
): boolean {
  const { rows, heights } = memory;
  const { worth: offered, marks } = memory.offers[at.use]!;
  let r = memory.rowFrom[row]!;
  const rowEnd = memory.rowTo[row]!;
  let h = memory.heightFrom[stack]!;
  const heightEnd = memory.heightTo[stack]!;
  let before = memory.heightFrom[at.before]!;
  const beforeEnd = memory.heightTo[at.before]!;
  let rowWorth = 0;
  let heightWorth = 0;
  let had = 0;
  let isBetter = false;
  while (r < rowEnd || h < heightEnd) {
    const rowAt = r < rowEnd ? Math.max(at.from, rows.at[r]!) : Infinity;
    const heightAt = h < heightEnd ? heights.at[h]! : Infinity;
    const p = rowAt < heightAt ? rowAt : heightAt;
    while (r < rowEnd && rows.at[r]! <= p) rowWorth = rows.value[r++]!;
    while (h < heightEnd && heights.at[h]! <= p) heightWorth = heights.value[h++]!;
    while (before < beforeEnd && heights.at[before]! <= p) had = heights.value[before++]!;
    // Before its first step a row is none, and so is a stack that uses anything.
    if (rowWorth === 0 || (heightWorth === 0 && !at.isOnNothing)) continue;
    const total = rowWorth + heightWorth;
    if (total <= had || total <= offered[p]!) continue;
    offered[p] = total;
    marks[p >> 5] = marks[p >> 5]! | (1 << (p & 31));
    isBetter = true;
  }
  return isBetter;
}

/** Makes the staircase of a height and a use of the one before it and of what was offered; what is worth no more than a stack that uses less is left out. */
function takeOffers({ counting, memory }: CountedPricing, j: number, use: number): void {
  const { uses, less } = counting;
  const { heights, heightFrom, heightTo } = memory;
  const stack = j * uses + use;
  heightFrom[stack] = heights.end;
  mergeOffers(heights, memory.offers[use]!, heightFrom[stack - uses]!, heightTo[stack - uses]!, (p, worth) =>
    less[use]!.some((v) => {
      const other = j * uses + v;
      return stairsAt(heights, heightFrom[other]!, heightTo[other]!, p) >= worth;
    }),
  );
  heightTo[stack] = heights.end;
}

/** As stackStrips, a staircase for each height and use. */
export function stackCountedStrips(counted: CountedPricing, start: number): void {
  const { pricing, counting, memory } = counted;
  const { uses, sum } = counting;
  const { heightFrom, heightTo, rowFrom, rowTo, isSame } = memory;
  const { alias } = pricing.memory;
  const { from: lowest, to, band, under } = pricing.bands.arcs;
  const from = firstRippable(pricing, start);
  memory.heights.end = 0;
  heightFrom.fill(0, 0, uses);
  heightTo.fill(0, 0, uses);
  isSame.fill(0, 0, uses);
  const isBetter = new Uint8Array(uses);
  let work = 0;
  let a = 0;
  for (let j = 1; j < pricing.raster.ys.length; j += 1) {
    isBetter.fill(0);
    for (; a < to.length && to[a] === j; a += 1) {
      const at = lowest[a]!;
      const strip = alias[band[a]!]!;
      const beneath = under[a]!;
      if (from >= pricing.raster.xs.length) continue;
      const isUnder = at > 0 && beneath >= 0 && alias[beneath] === strip;
      for (let below = 0; below < uses; below += 1) {
        const stack = at * uses + below;
        if (isUnder && isSame[stack] === 1) continue;
        if (below > 0 && heightFrom[stack] === heightTo[stack]) continue;
        for (let more = 0; more < uses; more += 1) {
          const use = sum[below * uses + more]!;
          const row = strip * uses + more;
          if (use < 0 || rowFrom[row] === rowTo[row]) continue;
          work += 4 + rowTo[row]! - rowFrom[row]! + heightTo[stack]! - heightFrom[stack]!;
          if (
            offerStrip(counted, stack, row, {
              before: (j - 1) * uses + use,
              use,
              from,
              isOnNothing: below === 0,
            })
          )
            isBetter[use] = 1;
        }
      }
    }
    for (let use = 0; use < uses; use += 1) {
      isSame[j * uses + use] = 1 - isBetter[use]!;
      if (isBetter[use] === 1) {
        takeOffers(counted, j, use);
        continue;
      }
      heightFrom[j * uses + use] = heightFrom[(j - 1) * uses + use]!;
      heightTo[j * uses + use] = heightTo[(j - 1) * uses + use]!;
    }
  }
  pricing.meter.spent += 2 * work;
}
