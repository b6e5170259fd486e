import { type Pricing } from '../frame.ts';
import { type Offers, type Stairs, openOffers, openStairs } from '../stairs.ts';
import { type Counting, worthByUse } from './counting.ts';

/** A row in the making: its steps for one use. */
export interface RowOfUse {
  readonly at: Int32Array;
  readonly value: Float64Array;
  count: number;
}

/**
 * Working memory of one plate's counted pricing: as Memory, with a row, a stack of strips and offers for each use. Rows are numbered
 * band × uses + use, stacks height × uses + use, the labels of a row use × positions + position.
 */
export interface CountedMemory {
  readonly rows: Stairs;
  readonly rowFrom: Int32Array;
  readonly rowTo: Int32Array;
  readonly heights: Stairs;
  readonly heightFrom: Int32Array;
  readonly heightTo: Int32Array;
  readonly isSame: Uint8Array;
  readonly offers: readonly Offers[];
  /** A bit for each position at which a row in the making has an offer of any use. */
  readonly anyOffer: Int32Array;
  readonly making: readonly RowOfUse[];
  /** By label: where its last piece starts, the label before that piece (−1: none), the piece's option and use. */
  readonly lastStart: Int32Array;
  readonly lastLabel: Int32Array;
  readonly lastOption: Int32Array;
  readonly lastUse: Int32Array;
  /** Worth of each option's best stack, by option × uses + use; 0 or less where there is none. */
  readonly optionWorth: Float64Array;
}

/** What a counted pricing works with: the uncounted one of the same plate and worth, whose lists and clear plate it uses. */
export interface CountedPricing {
  readonly pricing: Pricing;
  readonly counting: Counting;
  readonly memory: CountedMemory;
}

/** Working memory for so many uses. O(uses × (positions + bands + heights)). */
export function countedMemoryFor({ raster, bands }: Pricing, uses: number): CountedMemory {
  const n = raster.xs.length;
  const labels = (): Int32Array => new Int32Array(n * uses);
  const rows = bands.count * uses;
  const stacks = raster.ys.length * uses;
  return {
    rows: openStairs(),
    rowFrom: new Int32Array(rows),
    rowTo: new Int32Array(rows),
    heights: openStairs(),
    heightFrom: new Int32Array(stacks),
    heightTo: new Int32Array(stacks),
    isSame: new Uint8Array(stacks),
    offers: Array.from({ length: uses }, () => openOffers(n)),
    anyOffer: new Int32Array((n >> 5) + 1),
    making: Array.from({ length: uses }, () => ({
      at: new Int32Array(n),
      value: new Float64Array(n),
      count: 0,
    })),
    lastStart: labels(),
    lastLabel: labels(),
    lastOption: labels(),
    lastUse: labels(),
    optionWorth: new Float64Array(bands.options.length * uses),
  };
}

/** Values every stack for every use. To be called when the worth changes. */
export function valueUses({ pricing, counting, memory }: CountedPricing): void {
  pricing.bands.options.forEach((option, id) => {
    memory.optionWorth.set(worthByUse(option, pricing.worth, counting), id * counting.uses);
  });
}
