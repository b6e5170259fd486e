import type { Meter } from '../meter.ts';
import type { Plate } from '../plate.ts';
import { perGroup } from './group-table.ts';
import { type Numberings, openNumberings } from './band-group.ts';
import type { Bands } from './bands.ts';
import type { Raster } from './raster-plate.ts';
import { type Stack, type StackOption, bestStack } from './stack.ts';
import { type Offers, type Stairs, openOffers, openStairs } from './stairs.ts';

/** What plates that are priced one after another share: the staircases of the pricing under way, lists, and a shelf for what is made ready. */
export interface Scratch extends Pick<Memory, 'rows' | 'heights'> {
  /** Lists told apart while a plate is made ready. */
  readonly numberings: Numberings;
  /** Ways to let go of what was made ready, the oldest first: where plates are very many only the last made are kept. */
  readonly shelf: (() => void)[];
}

/** Staircases without steps, no lists, and an empty shelf. */
export function openScratch(): Scratch {
  return { rows: openStairs(), heights: openStairs(), numberings: openNumberings(), shelf: [] };
}

/** Working memory of one plate's pricing, made once and used again for every worth. */
export interface Memory {
  /** Rows of the frame: by band, best worth of a row that starts at the frame's x and ends by each position. */
  readonly rows: Stairs;
  readonly rowFrom: Int32Array;
  readonly rowTo: Int32Array;
  /** Band whose row stands for each band in this frame (the clear one of its width behind the last defect). */
  readonly alias: Int32Array;
  /** By clear band, the position behind which rows of its width are of no use to the frame; −1: all of them. */
  readonly until: Int16Array;
  /** Best worth of strips up to each height, by position. */
  readonly heights: Stairs;
  readonly heightFrom: Int32Array;
  readonly heightTo: Int32Array;
  /** 1 for a height that holds no more than the height before it. */
  readonly isSame: Uint8Array;
  readonly offers: Offers;
  /** Row in the making: at each of its steps where the last piece starts, the step before that piece (−1: none) and which option it is. */
  readonly lastStart: Int32Array;
  readonly lastStep: Int32Array;
  readonly lastOption: Int32Array;
  readonly optionValue: Float64Array;
  readonly stacks: Stack[];
  /** Of the band whose row is in the making: its groups that are worth anything (where in the table), shortest first, and their worth where nothing is in the way. */
  readonly active: Int32Array;
  readonly activeWorth: Float64Array;
}

/** Working memory for a raster and its bands. O(positions + bands + heights). */
export function memoryFor(raster: Raster, bands: Bands, { rows, heights }: Scratch): Memory {
  const n = raster.xs.length;
  const all = bands.count;
  const high = raster.ys.length;
  return {
    rows,
    rowFrom: new Int32Array(all),
    rowTo: new Int32Array(all),
    alias: new Int32Array(all),
    until: new Int16Array(all).fill(n - 1),
    heights,
    heightFrom: new Int32Array(high),
    heightTo: new Int32Array(high),
    isSame: new Uint8Array(high),
    offers: openOffers(n),
    lastStart: new Int32Array(n),
    lastStep: new Int32Array(n),
    lastOption: new Int32Array(n),
    optionValue: new Float64Array(bands.options.length),
    stacks: [],
    active: new Int32Array(raster.groups.length),
    activeWorth: new Float64Array(raster.groups.length),
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
export function valueStacks({ memory, bands, worth, caps }: Pricing): void {
  const { optionValue, stacks } = memory;
  bands.options.forEach((option, id) => {
    const stack = cappedStack(option, worth, caps);
    stacks[id] = stack;
    optionValue[id] = stack.value;
  });
}

/** Lists a band's groups that are worth anything, by where they begin in the table. Returns how many. */
export function activate({ memory, bands }: Pricing, band: number): number {
  const { optionValue, active, activeWorth } = memory;
  const { offered } = bands;
  const { table } = bands.groups;
  const { from } = bands.lists;
  const to = from[band + 1]!;
  let count = 0;
  for (let k = from[band]!; k < to; k += 1) {
    const group = perGroup * offered[k]!;
    const worth = optionValue[table[group + 1]!]!;
    if (worth <= 0) continue;
    active[count] = group;
    activeWorth[count] = worth;
    count += 1;
  }
  return count;
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

/**
 * First position at which a section from `start` is long enough to be ripped. On a relaxed raster, where a position stands for all up to
 * the next, the one that stands for the shortest such section.
 */
export function firstRippable({ raster, plate }: Pricing, start: number): number {
  const { xs, relaxed, exactX } = raster;
  const least = xs[start]! + plate.crosscutKerf + plate.shortestRip;
  let p = start;
  while (p < xs.length && xs[p]! < least) p += 1;
  return relaxed && !exactX && p > start && xs[p] !== least ? p - 1 : p;
}
