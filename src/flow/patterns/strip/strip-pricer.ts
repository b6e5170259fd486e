import type { Meter } from '../meter.ts';
import type { Kind, Placement, Plate, PlatePattern } from '../plate.ts';
import { type Bands, bandsOf } from './bands.ts';
import { type Memory, type Pricing, memoryFor, valueStacks } from './frame.ts';
import { type Raster, type RasterSize, rasterOf } from './raster-plate.ts';
import { cutSections } from './sections.ts';
import { fillPlate, tracePlate } from './trace.ts';

/** What a plate can be asked, however its patterns are found. Made once per plate; `worth` changes from call to call. */
export interface Pricer {
  /**
   * An upper bound on the worth of any pattern, however often it uses a kind. When it exceeds `target` it comes
   * with the pattern that reaches it (null if the raster is a relaxation, whose best need not be a pattern).
   */
  bound(worth: Float64Array, target: number): PriceBound;
  /**
   * A good pattern within the caps, not always the best; empty when it looks as if none is worth more than `target`.
   * @param fine sought among all positions listed, not only a rough selection
   */
  pattern(worth: Float64Array, caps: Int32Array, target: number, fine?: boolean): PlatePattern;
  /**
   * A pattern worth more than `target` found quickly, however often it uses a kind; null when a quick search finds none.
   */
  glance(worth: Float64Array, target: number): PlatePattern | null;
  /** Whether a glance is much quicker than the bound. */
  isQuickAtAGlance(): boolean;
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

function sideOf(plate: Plate, kinds: readonly Kind[], size: RasterSize): Side | null {
  const found = rasterOf(plate, kinds, size);
  if (found === null) return null;
  // Nothing was rounded: then it is no relaxation, and its patterns can be cut.
  const raster = found.exactX && found.exactY ? { ...found, relaxed: false } : found;
  const bands = bandsOf(plate, raster);
  return { raster, bands, memory: memoryFor(raster, bands) };
}

/** Most candidate positions along and across, for patterns and for bounds. */
export interface Fineness {
  readonly patternX: number;
  readonly patternY: number;
  readonly boundX: number;
  readonly boundY: number;
  /** The same for quick searches, used where the others list many more. */
  readonly roughX: number;
  readonly roughY: number;
  /** Most section starts opened in search of one pattern. */
  readonly mostStarts: number;
}

/** A plate whose positions times strips are fewer is searched as quickly in full. */
const worthARoughSide = 15_000;

function sizeOf({ raster, bands }: Side): number {
  return raster.xs.length * bands.arcs.length;
}

const nothingFits: Pricer = {
  bound: () => ({ bound: 0, pattern: null }),
  pattern: () => ({ placements: [], value: 0 }),
  glance: () => null,
  isQuickAtAGlance: () => false,
};

function worthOf(placements: readonly Placement[], worth: Float64Array): number {
  return placements.reduce((sum, placement) => sum + worth[placement.kind]!, 0);
}

/**
 * Opens the pricing of one plate in four stages: sections, strips, pieces, pieces ripped once more (DESIGN,
 * section 9). Patterns and bounds share one raster when the positions are few enough; else the bound has a
 * coarser one of its own, rounded the other way.
 */
export function openStripPricer(
  plate: Plate,
  kinds: readonly Kind[],
  fineness: Fineness,
  meter: Meter,
): Pricer {
  const below = sideOf(plate, kinds, { mostX: fineness.patternX, mostY: fineness.patternY, relaxed: false });
  if (below === null) return nothingFits;
  const complete = below.raster.exactX && below.raster.exactY;
  let above: Side | null = complete ? below : null;
  let quick: Side | null = null;
  const rough = (): Side => {
    const size = { mostX: fineness.roughX, mostY: fineness.roughY, relaxed: false };
    quick ??= sizeOf(below) < worthARoughSide ? below : (sideOf(plate, kinds, size) ?? below);
    return quick;
  };
  return {
    bound(worth, target) {
      above ??= sideOf(plate, kinds, { mostX: fineness.boundX, mostY: fineness.boundY, relaxed: true });
      const pricing: Pricing = { plate, ...(above ?? below), worth, caps: null, meter };
      valueStacks(pricing);
      const sections = cutSections(pricing, 0, target, Infinity);
      if (pricing.raster.relaxed || sections.bound <= target) return { bound: sections.bound, pattern: null };
      const placements = tracePlate(pricing, sections);
      return { bound: sections.bound, pattern: { placements, value: worthOf(placements, worth) } };
    },
    glance(worth, target) {
      const pricing: Pricing = { plate, ...rough(), worth, caps: null, meter };
      valueStacks(pricing);
      const sections = cutSections(pricing, 0, target, fineness.mostStarts);
      if (sections.worth[sections.worth.length - 1]! <= target) return null;
      const placements = tracePlate(pricing, sections);
      return { placements, value: worthOf(placements, worth) };
    },
    isQuickAtAGlance: () => rough() !== above,
    pattern(worth, caps, target, fine = false) {
      const left = caps.slice();
      const side = fine ? below : rough();
      const pricing: Pricing = { plate, ...side, worth: worth.slice(), caps: left, meter };
      const placements = fillPlate(pricing, worth, left, target, fineness.mostStarts);
      return { placements, value: worthOf(placements, worth) };
    },
  };
}
