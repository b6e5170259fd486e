import { type Pricing, firstRippable } from './frame.ts';

/**
 * Calls back for each step of what one section holds, once rows and strips are filled from its start: at each position
 * where a section that ends there holds more than every shorter one. Too short to be ripped it holds a row as wide as the plate.
 */
export function eachSection(
  pricing: Pricing,
  start: number,
  take: (end: number, worth: number) => void,
): void {
  const { memory, bands } = pricing;
  const { rows, heights } = memory;
  const rippable = firstRippable(pricing, start);
  let last = 0;
  if (bands.fullBand >= 0) {
    const row = memory.alias[bands.fullBand]!;
    for (let k = memory.rowFrom[row]!; k < memory.rowTo[row]! && rows.at[k]! < rippable; k += 1) {
      last = rows.value[k]!;
      take(rows.at[k]!, last);
    }
  }
  const top = memory.heightFrom.length - 1;
  for (let k = memory.heightFrom[top]!; k < memory.heightTo[top]!; k += 1) {
    if (heights.value[k]! <= last) continue;
    last = heights.value[k]!;
    take(heights.at[k]!, last);
  }
}
