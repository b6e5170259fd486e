import type { Placement } from '../../plate.ts';
import type { ClearPlate } from '../clear-plate.ts';
import { firstRippable } from '../frame.ts';
import { limitToSection } from '../row-limits.ts';
import { stackOption } from '../stack.ts';
import { stairsAt } from '../stairs.ts';
import type { CountedPricing } from './counted-frame.ts';
import { stackCountedStrips } from './counted-heights.ts';
import { fillCountedRow, fillCountedRows } from './counted-rows.ts';
import type { CountedSection } from './counted-sections.ts';
import { stackOfUse } from './counting.ts';

/** One strip as traced back. */
interface TracedStrip {
  readonly band: number;
  readonly y: number;
  readonly use: number;
}

/** An arc and how a stack's use is shared between the stack below it and its row. */
interface Share {
  readonly from: number;
  readonly below: number;
  readonly strip: TracedStrip;
}

/** The arc that the stack of height j and this use ends with, in a section that ends at `end`. */
function lastArc(
  { pricing, counting, memory }: CountedPricing,
  j: number,
  use: number,
  end: number,
): Share | null {
  const { rows, rowFrom, rowTo, heights, heightFrom, heightTo } = memory;
  const { uses, sum } = counting;
  const height = (i: number): number => stairsAt(heights, heightFrom[i]!, heightTo[i]!, end);
  const here = height(j * uses + use);
  const { arcs } = pricing.bands;
  for (let a = arcs.to.indexOf(j); a >= 0 && arcs.to[a] === j; a += 1) {
    const from = arcs.from[a]!;
    const band = arcs.band[a]!;
    const y = pricing.raster.ys[from]!;
    for (let below = 0; below < uses; below += 1) {
      const under = height(from * uses + below);
      if (below > 0 && under === 0) continue;
      for (let more = 0; more < uses; more += 1) {
        if (sum[below * uses + more] !== use) continue;
        const row = pricing.memory.alias[band]! * uses + more;
        const worth = stairsAt(rows, rowFrom[row]!, rowTo[row]!, end);
        if (worth > 0 && under + worth >= here) return { from, below, strip: { band, y, use: more } };
      }
    }
  }
  return null;
}

/** The strips of a section, lowest first; rows and heights must be filled for its start. */
function traceStrips(counted: CountedPricing, { start, end, use }: CountedSection): TracedStrip[] {
  const { pricing, counting, memory } = counted;
  const { fullBand } = pricing.bands;
  if (end < firstRippable(pricing, start)) return fullBand < 0 ? [] : [{ band: fullBand, y: 0, use }];
  const { heights, heightFrom, heightTo } = memory;
  const height = (j: number, of: number): number => {
    const i = j * counting.uses + of;
    return stairsAt(heights, heightFrom[i]!, heightTo[i]!, end);
  };
  const strips: TracedStrip[] = [];
  let left = use;
  for (let j = pricing.raster.ys.length - 1; j > 0;) {
    const here = height(j, left);
    if (here === 0) break;
    if (height(j - 1, left) >= here) {
      j -= 1;
      continue;
    }
    const share = lastArc(counted, j, left, end);
    if (share === null) break;
    strips.unshift(share.strip);
    j = share.from;
    left = share.below;
  }
  return strips;
}

/** The pieces of a strip's best row of its use. Fills the row afresh, since rows share one trace. */
function tracePieces(
  counted: CountedPricing,
  strip: TracedStrip,
  { start, end }: CountedSection,
): Placement[] {
  const { pricing, counting, memory } = counted;
  const { raster, bands, plate, worth } = pricing;
  const n = raster.xs.length;
  const row = pricing.memory.alias[strip.band]!;
  fillCountedRow(counted, row, start, end);
  const { at, count } = memory.making[strip.use]!;
  let last = count - 1;
  while (last >= 0 && at[last]! > end) last -= 1;
  const width = bands.lists.width[strip.band]!;
  const pieces: Placement[] = [];
  for (let label = last < 0 ? -1 : strip.use * n + at[last]!; label >= 0; label = memory.lastLabel[label]!) {
    const { length } = bands.options[memory.lastOption[label]!]!;
    const x = raster.xs[memory.lastStart[label]!]!;
    const shapes = raster.groups.find((g) => g.length === length)!.shapes.filter((s) => s.width <= width);
    const option = stackOption(plate, shapes, { x, length, y: strip.y, width });
    if (option === null) continue;
    for (const piece of stackOfUse(option, worth, counting, memory.lastUse[label]!)) {
      const { kind, clearance, offset } = piece;
      pieces.push({ kind, clearance, x, y: strip.y + offset, length, width: piece.width });
    }
  }
  return pieces.reverse();
}

/** The pieces of the sections found. */
export function traceCounted(
  counted: CountedPricing,
  sections: readonly CountedSection[],
  clear: ClearPlate,
): Placement[] {
  return sections.flatMap((section) => {
    limitToSection(counted.pricing, clear, section);
    fillCountedRows(counted, section.start);
    stackCountedStrips(counted, section.start);
    return traceStrips(counted, section).flatMap((strip) => tracePieces(counted, strip, section));
  });
}
