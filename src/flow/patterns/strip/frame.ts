import type { Plate } from '../plate.ts';
import type { Meter } from '../meter.ts';
import type { BandGroup, Bands } from './bands.ts';
import type { Raster } from './raster-plate.ts';
import { type Stack, type StackOption, bestStack } from './stack.ts';

/** Working memory of one plate's pricing, made once and used again for every worth. */
export interface Memory {
  /** Row of each band: best worth of a row that starts at the frame's x and ends by each position. */
  readonly rows: readonly Float64Array[];
  /** Band whose row stands for each band in this frame (the clear one of its width behind the last defect). */
  readonly alias: Int32Array;
  /** Best worth of strips up to each height, by position. */
  readonly heights: readonly Float64Array[];
  /** Row in the making: where the last piece started and which option it was, for counting against caps. */
  readonly lastStart: Int32Array;
  readonly lastOption: Int32Array;
  readonly optionValue: Float64Array;
  readonly stacks: Stack[];
  /** Per band the lengths that are worth anything under the present worth. */
  readonly active: (readonly BandGroup[])[];
}

/** Working memory for a raster and its bands, all zero. O(positions × (bands + heights)). */
export function memoryFor(raster: Raster, bands: Bands): Memory {
  const n = raster.xs.length;
  return {
    rows: bands.bands.map(() => new Float64Array(n)),
    alias: new Int32Array(bands.bands.length),
    heights: Array.from(raster.ys, () => new Float64Array(n)),
    lastStart: new Int32Array(n),
    lastOption: new Int32Array(n),
    optionValue: new Float64Array(bands.options.length),
    stacks: [],
    active: [],
  };
}

/** What the frames of one pricing share. */
export interface Pricing {
  readonly plate: Plate;
  readonly raster: Raster;
  readonly bands: Bands;
  readonly memory: Memory;
  readonly worth: Float64Array;
  /** When given, no row holds more of a kind than this; rows are then good, not always best. */
  readonly caps: Int32Array | null;
  readonly meter: Meter;
}

/** Values every stack under the worth. To be called when the worth or the caps change. */
export function valueStacks(pricing: Pricing): void {
  const { memory, bands, worth, caps } = pricing;
  bands.options.forEach((option, id) => {
    const stack = cappedStack(option, worth, caps);
    memory.stacks[id] = stack;
    memory.optionValue[id] = stack.value;
  });
  bands.bands.forEach((band, index) => {
    memory.active[index] = band.groups.filter((group) => memory.optionValue[group.clear]! > 0);
  });
}

/** The most valuable stack of the option; where that exceeds the caps, its most valuable single piece. */
export function cappedStack(option: StackOption, worth: Float64Array, caps: Int32Array | null): Stack {
  const stack = bestStack(option, worth);
  return caps !== null && !withinCaps(stack, caps) ? bestSingle(option.arcs, worth) : stack;
}

function withinCaps(stack: Stack, caps: Int32Array): boolean {
  return stack.pieces.every(
    ({ kind }) => stack.pieces.filter((other) => other.kind === kind).length <= caps[kind]!,
  );
}

function bestSingle(arcs: Stack['pieces'], worth: Float64Array): Stack {
  let best: Stack = { value: 0, pieces: [] };
  for (const arc of arcs) {
    if (arc.from === 0 && worth[arc.kind]! > best.value) best = { value: worth[arc.kind]!, pieces: [arc] };
  }
  return best;
}

/** Whether the row that ends at position p can take the option's pieces and stay within the caps. */
function rowTakes(memory: Memory, caps: Int32Array, p: number, option: number): boolean {
  const { stacks, lastOption, lastStart } = memory;
  const wanted = stacks[option]!.pieces;
  for (let w = 0; w < wanted.length; w += 1) {
    const { kind } = wanted[w]!;
    let count = 0;
    for (let v = 0; v < wanted.length; v += 1) if (wanted[v]!.kind === kind) count += 1;
    for (let at = p, id = lastOption[at]!; id > 0; at = lastStart[at]!, id = lastOption[at]!) {
      const pieces = stacks[id]!.pieces;
      for (let v = 0; v < pieces.length; v += 1) if (pieces[v]!.kind === kind) count += 1;
    }
    if (count > caps[kind]!) return false;
  }
  return true;
}

/**
 * Best rows of one band that start at position `start`: row[p] = most worth of pieces that end by position p.
 * A forward DP over positions: from each, either waste up to the next position or a stack of each length.
 * A piece is started only where the worth has just risen or the band has just changed: elsewhere the position
 * before does as well. Wood before the first piece may be less than a kerf: the
 * cut that frees the piece then runs partly beside it. O(positions × lengths) at worst.
 */
export function fillRow(pricing: Pricing, band: number, start: number, row: Float64Array): void {
  const { raster, memory, bands, caps } = pricing;
  const end = raster.xs.length - 1;
  const { lastStart, lastOption, optionValue } = memory;
  const { wakes } = bands.bands[band]!;
  const groups = memory.active[band]!;
  row.fill(0, start);
  lastOption.fill(0, start);
  let wake = true;
  pricing.meter.spent += (end - start) / 4;
  for (let p = start; p < end; p += 1) {
    if (p > start) {
      if (row[p - 1]! >= row[p]!) {
        row[p] = row[p - 1]!;
        lastStart[p] = lastStart[p - 1]!;
        lastOption[p] = lastOption[p - 1]!;
        if (wakes[p] === 0 && !wake) continue;
      }
    }
    wake = false;
    pricing.meter.spent += groups.length;
    const worth = row[p]!;
    for (let g = 0; g < groups.length; g += 1) {
      const group = groups[g]!;
      const behind = raster.groups[group.group]!.next[p]!;
      if (behind < 0) continue;
      const k = p - group.start;
      const id = k >= 0 && k < group.ids.length ? group.ids[k]! : group.clear;
      const total = worth + optionValue[id]!;
      if (total <= row[behind]! || id === 0) continue;
      if (caps !== null && !rowTakes(memory, caps, p, id)) continue;
      row[behind] = total;
      lastStart[behind] = p;
      lastOption[behind] = id;
    }
  }
  if (end > start && row[end - 1]! > row[end]!) {
    row[end] = row[end - 1]!;
    lastStart[end] = lastStart[end - 1]!;
    lastOption[end] = lastOption[end - 1]!;
  }
}

/** Fills the rows of all bands from one start. Behind a band's last defect the clear band of its width stands in. */
export function fillRows(pricing: Pricing, start: number): void {
  const { memory, bands } = pricing;
  bands.bands.forEach((band, index) => {
    memory.alias[index] = band.clearBand !== index && start >= band.clearFrom ? band.clearBand : index;
    if (memory.alias[index] === index) fillRow(pricing, index, start, memory.rows[index]!);
  });
}

/** First position at which a section from `start` is long enough to be ripped. */
export function firstRippable(pricing: Pricing, start: number): number {
  const { xs } = pricing.raster;
  const least = xs[start]! + pricing.plate.crosscutKerf + pricing.plate.shortestRip;
  let p = start;
  while (p < xs.length && xs[p]! < least) p += 1;
  return p;
}

/**
 * Best stack of strips for every section end: heights[j][p] = most worth of strips below height j in the
 * section from `start` to p. Starts from height `base` (strips below it are settled). O(arcs × positions).
 */
export function stackStrips(pricing: Pricing, start: number, base: number): void {
  const { memory, bands, raster } = pricing;
  const { heights, rows, alias } = memory;
  const from = firstRippable(pricing, start);
  const n = raster.xs.length;
  let a = 0;
  for (let j = base; j < raster.ys.length; j += 1) {
    const here = heights[j]!;
    if (j === base) here.fill(0, from);
    else here.set(heights[j - 1]!.subarray(from), from);
    while (a < bands.arcs.length && bands.arcs[a]!.to < j) a += 1;
    for (let k = a; k < bands.arcs.length && bands.arcs[k]!.to === j; k += 1) {
      const arc = bands.arcs[k]!;
      if (arc.from < base) continue;
      const below = heights[arc.from]!;
      const row = rows[alias[arc.band]!]!;
      pricing.meter.spent += (n - from) / 4;
      for (let p = from; p < n; p += 1) {
        const total = below[p]! + row[p]!;
        if (total > here[p]!) here[p] = total;
      }
    }
  }
}

/** Most worth of a section from `start` to p, once rows and strips are filled. */
export function sectionWorth(pricing: Pricing, from: number, p: number): number {
  const { memory, bands } = pricing;
  if (p >= from) return memory.heights[memory.heights.length - 1]![p]!;
  return bands.fullBand < 0 ? 0 : memory.rows[memory.alias[bands.fullBand]!]![p]!;
}
