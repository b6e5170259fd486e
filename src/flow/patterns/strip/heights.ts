import { type Pricing, firstRippable } from './frame.ts';
import { mergeOffers } from './stairs.ts';

/**
 * Offers to a height what the strips below an arc and the row on it make together, where that is more than the height
 * before it has. Positions before `from` count as `from`: a shorter section is not ripped. Says whether anything was offered. O(steps).
 */
function offerStrip({ memory, bands }: Pricing, arc: number, from: number): boolean {
  const { rows, heights, heightFrom, heightTo, alias } = memory;
  const below = bands.arcs.from[arc]!;
  const to = bands.arcs.to[arc]!;
  const { worth: offered, marks } = memory.offers;
  const row = alias[bands.arcs.band[arc]!]!;
  let r = memory.rowFrom[row]!;
  const rowEnd = memory.rowTo[row]!;
  let h = heightFrom[below]!;
  const heightEnd = heightTo[below]!;
  let before = heightFrom[to - 1]!;
  const beforeEnd = heightTo[to - 1]!;
  let rowWorth = 0;
  let heightWorth = 0;
  let had = 0;
  let isBetter = false;
  while (r < rowEnd || h < heightEnd) {
    const rowAt = r < rowEnd ? Math.max(from, rows.at[r]!) : Infinity;
    const heightAt = h < heightEnd ? heights.at[h]! : Infinity;
    const p = rowAt < heightAt ? rowAt : heightAt;
    while (r < rowEnd && rows.at[r]! <= p) rowWorth = rows.value[r++]!;
    while (h < heightEnd && heights.at[h]! <= p) heightWorth = heights.value[h++]!;
    while (before < beforeEnd && heights.at[before]! <= p) had = heights.value[before++]!;
    const total = rowWorth + heightWorth;
    if (total <= had || total <= offered[p]!) continue;
    offered[p] = total;
    marks[p >> 5] = marks[p >> 5]! | (1 << (p & 31));
    isBetter = true;
  }
  return isBetter;
}

/**
 * Best stack of strips for every section end, a staircase for each height j: most worth of strips below j in the
 * section from `start`. Starts from height `base` (strips below it are settled). A strip is laid only on a height that holds
 * more than the one before it, or where the strip itself offers something else than there. O(arcs × steps).
 */
export function stackStrips(pricing: Pricing, start: number, base: number): void {
  const { memory, bands, raster } = pricing;
  const { heights, heightFrom, heightTo, isSame, alias } = memory;
  const from = firstRippable(pricing, start);
  const { from: below, to, band, under } = bands.arcs;
  heights.end = 0;
  heightFrom[base] = 0;
  heightTo[base] = 0;
  isSame[base] = 0;
  let work = 0;
  let a = 0;
  while (a < to.length && to[a]! <= base) a += 1;
  for (let j = base + 1; j < raster.ys.length; j += 1) {
    let isBetter = false;
    for (; a < to.length && to[a] === j; a += 1) {
      const at = below[a]!;
      if (at < base || from >= raster.xs.length) continue;
      const row = alias[band[a]!]!;
      const beneath = under[a]!;
      if (at > base && isSame[at] === 1 && beneath >= 0 && alias[beneath] === row) continue;
      work += 4 + memory.rowTo[row]! - memory.rowFrom[row]! + heightTo[at]! - heightFrom[at]!;
      if (offerStrip(pricing, a, from)) isBetter = true;
    }
    isSame[j] = isBetter ? 0 : 1;
    if (isBetter) {
      heightFrom[j] = heights.end;
      mergeOffers(heights, memory.offers, heightFrom[j - 1]!, heightTo[j - 1]!, null);
      heightTo[j] = heights.end;
      continue;
    }
    heightFrom[j] = heightFrom[j - 1]!;
    heightTo[j] = heightTo[j - 1]!;
  }
  pricing.meter.spent += (3 * work) / 4;
}
