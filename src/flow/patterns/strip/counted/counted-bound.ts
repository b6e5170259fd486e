import { clearPlate } from '../clear-plate.ts';
import type { Pricing } from '../frame.ts';
import type { PriceBound } from '../strip-pricer.ts';
import { type CountedMemory, countedMemoryFor, valueUses } from './counted-frame.ts';
import { cutCountedSections } from './counted-sections.ts';
import { traceCounted } from './counted-trace.ts';
import { type Counted, countingOf, usesOf } from './counting.ts';

/** Working memories of one plate, by number of uses. */
export type CountedMemories = Map<number, CountedMemory>;

/**
 * An upper bound on the worth of any pattern that uses no counted kind too often, with the pattern that
 * reaches it when it exceeds `target`. The stacks of the uncounted pricing must be valued.
 */
export function countedBound(
  pricing: Pricing,
  counted: readonly Counted[],
  memories: CountedMemories,
  target: number,
  slack: number,
  isClose: boolean,
): PriceBound {
  const uses = usesOf(counted);
  const memory = memories.get(uses) ?? countedMemoryFor(pricing, uses);
  memories.set(uses, memory);
  const here = { pricing, counting: countingOf(counted), memory };
  valueUses(here);
  const clear = clearPlate(pricing);
  const found = cutCountedSections(here, clear, target, slack, isClose);
  if (found.bound <= target || found.worth <= target) return { bound: found.bound, pattern: null };
  const placements = traceCounted(here, found.sections, clear);
  const value = placements.reduce((sum, { kind }) => sum + pricing.worth[kind]!, 0);
  return { bound: found.bound, pattern: { placements, value } };
}
