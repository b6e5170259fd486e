import type { Placement } from '../plate.ts';
import { type Pricing, cappedStack, firstRippable, valueStacks } from './frame.ts';
import { stackStrips } from './heights.ts';
import { limitToEnd, limitToSection } from './row-limits.ts';
import { fillRow, fillRows } from './rows.ts';
import { type Sections, cutSections } from './sections.ts';
import { type Stack, stackOption } from './stack.ts';
import { stairsAt } from './stairs.ts';

/** One strip as traced back: the height indices it lies between, and its band. */
interface TracedStrip {
  readonly to: number;
  readonly band: number;
  readonly y: number;
}

/** The sections of a DP's best, from the plate's butt end. */
export function traceSections(sections: Sections): { start: number; end: number }[] {
  const list: { start: number; end: number }[] = [];
  let p = sections.worth.length - 1;
  while (p > 0 && sections.worth[p]! > 0) {
    const start = sections.from[p]!;
    if (start < 0) {
      p = -1 - start;
      continue;
    }
    list.push({ start, end: p });
    p = start;
  }
  return list.reverse();
}

/** The strips of the best section from `start` to `end`, lowest first; rows and heights must be filled for `start`. */
function traceStrips(pricing: Pricing, start: number, end: number, base: number): TracedStrip[] {
  const { memory, bands } = pricing;
  const { rows, rowFrom, rowTo, heights, heightFrom, heightTo, alias } = memory;
  const top = heightFrom.length - 1;
  if (end < firstRippable(pricing, start)) {
    return bands.fullBand < 0 ? [] : [{ to: top, band: bands.fullBand, y: 0 }];
  }
  const height = (j: number): number => stairsAt(heights, heightFrom[j]!, heightTo[j]!, end);
  const row = (b: number): number => stairsAt(rows, rowFrom[b]!, rowTo[b]!, end);
  const strips: TracedStrip[] = [];
  const { from, to, band } = bands.arcs;
  let j = top;
  while (j > base) {
    const here = height(j);
    if (here === 0) break;
    if (height(j - 1) === here) {
      j -= 1;
      continue;
    }
    let a = to.indexOf(j);
    const isLast = (): boolean => from[a]! >= base && height(from[a]!) + row(alias[band[a]!]!) === here;
    while (a >= 0 && to[a] === j && !isLast()) a += 1;
    if (a < 0 || to[a] !== j) break;
    strips.push({ to: j, band: band[a]!, y: pricing.raster.ys[from[a]!]! });
    j = from[a]!;
  }
  return strips.reverse();
}

/** The stack that the row has at x, with where its pieces lie: options that differ in that alone are one to the DP. */
function stackAt(
  { plate, raster, bands, worth, caps }: Pricing,
  strip: TracedStrip,
  x: number,
  length: number,
): Stack['pieces'] {
  const width = bands.lists.width[strip.band]!;
  const shapes = raster.groups
    .find((group) => group.length === length)!
    .shapes.filter((s) => s.width <= width);
  const option = stackOption(plate, shapes, { x, length, y: strip.y, width });
  return option === null ? [] : cappedStack(option, worth, caps).pieces;
}

/** The pieces of the best row of a band from `start` to `end`. Fills the row afresh, since rows share one trace. */
function tracePieces(pricing: Pricing, strip: TracedStrip, start: number, end: number): Placement[] {
  const { memory, raster, bands } = pricing;
  const { rows, rowFrom, rowTo, lastStart, lastStep, lastOption } = memory;
  const band = memory.alias[strip.band]!;
  // Behind all other rows of the frame: these may still be asked for.
  fillRow(pricing, band, start, end);
  let last = rowTo[band]! - 1;
  while (last >= rowFrom[band]! && rows.at[last]! > end) last -= 1;
  const pieces: Placement[] = [];
  for (let p = last < rowFrom[band]! ? -1 : rows.at[last]!; p >= 0; p = lastStep[p]!) {
    const { length } = bands.options[lastOption[p]!]!;
    const x = raster.xs[lastStart[p]!]!;
    for (const { kind, clearance, offset, width } of stackAt(pricing, strip, x, length)) {
      pieces.push({ kind, clearance, x, y: strip.y + offset, length, width });
    }
  }
  return pieces.reverse();
}

/** Takes the pieces off the caps; false, and nothing taken, when they exceed them. */
function take(caps: Int32Array, pieces: readonly Placement[]): boolean {
  for (const { kind } of pieces) caps[kind] = caps[kind]! - 1;
  if (pieces.every(({ kind }) => caps[kind]! >= 0)) return true;
  for (const { kind } of pieces) caps[kind] = caps[kind]! + 1;
  return false;
}

/** Masks the worth of kinds that are used up, and values the stacks again. */
function settle(pricing: Pricing, worth: Float64Array, caps: Int32Array): void {
  for (let kind = 0; kind < worth.length; kind += 1) pricing.worth[kind] = caps[kind]! > 0 ? worth[kind]! : 0;
  valueStacks(pricing);
}

/**
 * Fills one section strip by strip, lowest first. The DP's strips may between them use a kind up twice; from the
 * first strip that does, the rest of the section is worked out again with what is left of the caps.
 */
function fillSection(
  pricing: Pricing,
  worth: Float64Array,
  caps: Int32Array,
  section: { start: number; end: number },
): Placement[] {
  const pieces: Placement[] = [];
  const { start, end } = section;
  for (let base = 0, again = true; again;) {
    again = false;
    settle(pricing, worth, caps);
    limitToEnd(pricing, end);
    fillRows(pricing, start);
    stackStrips(pricing, start, base);
    for (const strip of traceStrips(pricing, start, end, base)) {
      const row = tracePieces(pricing, strip, start, end);
      if (!take(caps, row)) {
        again = true;
        break;
      }
      pieces.push(...row);
      base = strip.to;
    }
  }
  return pieces;
}

/**
 * A pattern that keeps the caps: the DP's best sections are filled one after another, and after each section
 * that had to leave the DP's plan the plate behind it is planned again with what is left.
 * @param caps changed: what is left of each kind
 */
export function fillPlate(
  pricing: Pricing,
  worth: Float64Array,
  caps: Int32Array,
  target: number,
  mostStarts: number,
): Placement[] {
  const pieces: Placement[] = [];
  const last = pricing.raster.xs.length - 1;
  let had = 0;
  for (let first = 0; first < last;) {
    settle(pricing, worth, caps);
    const plan = traceSections(cutSections(pricing, first, Math.max(0, target - had), mostStarts));
    const section = plan[0];
    if (section === undefined) break;
    const row = fillSection(pricing, worth, caps, section);
    if (row.length === 0) break;
    pieces.push(...row);
    for (const { kind } of row) had += worth[kind]!;
    first = section.end;
  }
  return pieces;
}

/** The pieces of the DP's best sections as they are, caps or no caps. */
export function tracePlate(pricing: Pricing, sections: Sections): Placement[] {
  const { worth, clear } = sections;
  const { exactX, exactY } = pricing.raster;
  return traceSections(sections).flatMap(({ start, end }) => {
    // Among a selection of positions pieces may lie closer in a section than at the butt end.
    if (exactX && exactY) limitToSection(pricing, clear, { start, end, worth: worth[end]! - worth[start]! });
    else limitToEnd(pricing, end);
    fillRows(pricing, start);
    stackStrips(pricing, start, 0);
    return traceStrips(pricing, start, end, 0).flatMap((strip) => tracePieces(pricing, strip, start, end));
  });
}
