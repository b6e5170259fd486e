import type { Meter } from '../meter.ts';
import type { Kind, Placement, Plate, PlatePattern } from '../plate.ts';
import { type Bands, bandsOf } from './bands.ts';
import { type CountedMemories, countedBound } from './counted/counted-bound.ts';
import type { Counted } from './counted/counting.ts';
import { type Memory, type Pricing, type Scratch, memoryFor, openScratch, valueStacks } from './frame.ts';
import { type Raster, rasterOf } from './raster-plate.ts';
import { cutSections } from './sections.ts';
import { fillPlate, tracePlate } from './trace.ts';

/** What a plate can be asked, however its patterns are found. Made once per plate; `worth` changes from call to call. */
export interface Pricer {
  /**
   * An upper bound on the worth of any pattern, however often it uses a kind. When it exceeds `target` it comes
   * with the pattern that reaches it; on a raster that is a relaxation with the best one found that is worth more than the
   * target, or null.
   */
  bound(worth: Float64Array, target: number, way?: BoundWay): PriceBound;
  /** Whether kinds can be counted. */
  canCount(): boolean;
  /**
   * A good pattern within the caps, not always the best; empty when it looks as if none is worth more than `target`.
   * @param fine sought among all positions listed, not only a rough selection
   */
  pattern(worth: Float64Array, caps: Int32Array, target: number, fine?: boolean): PlatePattern;
  /**
   * A pattern worth more than `target` found quickly, however often it uses a kind; null when a quick search finds none.
   * @param fine as above: then not so quickly
   * @param slack by how much another may be worth more: it is had the sooner
   */
  glance(worth: Float64Array, target: number, fine?: boolean, slack?: number): PlatePattern | null;
  /** Whether a glance is much quicker than the bound. */
  isQuickAtAGlance(): boolean;
  /** Whether its bounds are the general engine's: dear, and not always met by a pattern. */
  readonly isGeneral: boolean;
}

/** How a bound is had. */
export interface BoundWay {
  /** By how much it may exceed what was found; left out: not at all. */
  readonly slack?: number;
  /** Section starts after which it is what they leave; left out: as many as it takes. */
  readonly mostStarts?: number | undefined;
  /** Whether a bound below the target is to be close too: else what promises no more than the target is not looked into. */
  readonly isClose?: boolean | undefined;
  /** Whether a pattern that pays will do where one is found sooner than a bound, which need only hold then. */
  readonly mayBeLoose?: boolean | undefined;
  /** Kinds that no pattern may use more often than said; each doubles the work, or more. */
  readonly counted?: readonly Counted[] | undefined;
}

export interface PriceBound {
  readonly bound: number;
  readonly pattern: PlatePattern | null;
}

interface Side {
  readonly raster: Raster;
  readonly bands: Bands;
  readonly memory: Memory;
}

function sideOf(plate: Plate, found: Raster, scratch: Scratch): Side {
  // Nothing was rounded: then it is no relaxation, and its patterns can be cut.
  const raster = found.exactX && found.exactY ? { ...found, relaxed: false } : found;
  const bands = bandsOf(plate, raster, scratch.numberings);
  return { raster, bands, memory: memoryFor(raster, bands, scratch) };
}

/** Most candidate positions along and across, for patterns and for bounds. */
export interface Fineness {
  readonly patternX: number;
  readonly patternY: number;
  readonly boundX: number;
  readonly boundY: number;
  /** Lists no longer than these are left whole for both; left out: none. */
  readonly wholeX?: number;
  readonly wholeY?: number;
  /** The same for quick searches, used where the others list many more. */
  readonly roughX: number;
  readonly roughY: number;
  /** Most section starts opened in search of one pattern. */
  readonly mostStarts: number;
  /**
   * Of how many plates all positions are kept at hand, by those that share their scratch; what is let go of is made anew when it
   * is asked for again. Left out: of all.
   */
  readonly mostKept?: number;
}

/** A plate with fewer positions times strips is searched as quickly in full. */
const worthARoughSide = 15_000;

const nothingFits: Pricer = {
  bound: () => ({ bound: 0, pattern: null }),
  pattern: () => ({ placements: [], value: 0 }),
  glance: () => null,
  isQuickAtAGlance: () => false,
  canCount: () => false,
  isGeneral: false,
};

/** Makes a thing when it is first wanted, and keeps it until it is let go of. */
function kept<T>(make: () => T): { readonly get: () => T; readonly letGo: () => void } {
  let made: { readonly value: T } | null = null;
  return {
    get: () => (made ??= { value: make() }).value,
    letGo: () => (made = null),
  };
}

/** What is told of a raster once and for all; null for none. */
function shapeOf(raster: Raster | null): { readonly isComplete: boolean; readonly isLarge: boolean } | null {
  if (raster === null) return null;
  const { xs, ys, widths, exactX, exactY } = raster;
  return { isComplete: exactX && exactY, isLarge: xs.length * ys.length * widths.length > worthARoughSide };
}

function worthOf(placements: readonly Placement[], worth: Float64Array): number {
  return placements.reduce((sum, placement) => sum + worth[placement.kind]!, 0);
}

/**
 * Opens the pricing of one plate in four stages: sections, strips, pieces, pieces ripped once more (DESIGN,
 * section 9). Patterns and bounds share one raster when the positions are few enough; else the bound has a
 * coarser one of its own, rounded the other way.
 * @param scratch for plates that are never priced at the same time: shared by them
 */
export function openStripPricer(
  plate: Plate,
  kinds: readonly Kind[],
  fineness: Fineness,
  meter: Meter,
  scratch = openScratch(),
): Pricer {
  const { patternX, patternY, boundX, boundY, roughX, roughY, wholeX = 0, wholeY = 0 } = fineness;
  const listed = (mostX: number, mostY: number, relaxed: boolean): Raster | null =>
    rasterOf(plate, kinds, { mostX, mostY, relaxed, wholeX, wholeY });
  const full = kept(() => listed(patternX, patternY, false));
  const opened = shapeOf(full.get());
  if (opened === null) return nothingFits;
  const { isComplete, isLarge } = opened;
  // Of very many boards the positions themselves take hundreds of megabytes.
  if (fineness.mostKept !== undefined) full.letGo();
  // Each side is made when it is first asked: a first layout needs none but the rough one.
  const finely = kept(() => {
    // Whoever asks for all positions has done with the rough selection, mostly.
    if (fineness.mostKept !== undefined) {
      if (isLarge) roughly.letGo();
      scratch.shelf.push(finely.letGo);
      if (scratch.shelf.length > fineness.mostKept) scratch.shelf.shift()!();
    }
    const side = sideOf(plate, full.get()!, scratch);
    if (fineness.mostKept !== undefined) full.letGo();
    return side;
  });
  const below = finely.get;
  const above = isComplete ? below : kept(() => sideOf(plate, listed(boundX, boundY, true)!, scratch)).get;
  const roughRaster = (): Raster => rasterOf(plate, kinds, { mostX: roughX, mostY: roughY, relaxed: false })!;
  const roughly = kept(() => sideOf(plate, roughRaster(), scratch));
  const rough = isLarge ? roughly.get : below;
  const memories: CountedMemories = new Map();
  /** The best pattern of one side, if it is worth more than the target. */
  const search = (
    side: Side,
    worth: Float64Array,
    target: number,
    mostStarts: number,
    slack = 0,
  ): PlatePattern | null => {
    const pricing: Pricing = { plate, ...side, worth, caps: null, meter };
    valueStacks(pricing);
    const sections = cutSections(pricing, 0, target, mostStarts, slack);
    if (sections.worth[sections.worth.length - 1]! <= target) return null;
    const placements = tracePlate(pricing, sections);
    return { placements, value: worthOf(placements, worth) };
  };
  return {
    canCount: () => !above().raster.relaxed,
    bound(worth, target, { slack = 0, mostStarts = Infinity, isClose = false, counted = [] } = {}) {
      const pricing: Pricing = { plate, ...above(), worth, caps: null, meter };
      valueStacks(pricing);
      if (counted.length > 0 && !pricing.raster.relaxed) {
        return countedBound(pricing, counted, memories, target, slack, isClose);
      }
      const sections = cutSections(pricing, 0, target, mostStarts, slack, isClose);
      if (sections.bound <= target) return { bound: sections.bound, pattern: null };
      // A relaxation's best need not be a pattern: one is sought among places that can be cut.
      if (pricing.raster.relaxed) {
        return { bound: sections.bound, pattern: search(below(), worth, target, mostStarts) };
      }
      if (sections.worth.at(-1)! <= target) return { bound: sections.bound, pattern: null };
      const placements = tracePlate(pricing, sections);
      return { bound: sections.bound, pattern: { placements, value: worthOf(placements, worth) } };
    },
    glance: (worth, target, fine = false, slack = 0) =>
      search(fine ? below() : rough(), worth, target, fineness.mostStarts, slack),
    isQuickAtAGlance: () => isLarge,
    isGeneral: false,
    pattern(worth, caps, target, fine = false) {
      const left = caps.slice();
      const side = fine ? below() : rough();
      const pricing: Pricing = { plate, ...side, worth: worth.slice(), caps: left, meter };
      const placements = fillPlate(pricing, worth, left, target, fineness.mostStarts);
      return { placements, value: worthOf(placements, worth) };
    },
  };
}
