import { describe, expect, it } from 'vitest';
import { bandsOf } from '../../../src/flow/patterns/strip/bands.ts';
import { type Pricing, memoryFor, openScratch, valueStacks } from '../../../src/flow/patterns/strip/frame.ts';
import { rasterOf } from '../../../src/flow/patterns/strip/raster-plate.ts';
import { clearPlate } from '../../../src/flow/patterns/strip/clear-plate.ts';
import { mostWorth } from './every-cut.ts';
import { type PlateCase, plateCase } from './random-plate.ts';

/** What the clear plate promises from the butt end on; null when no kind fits. */
function promiseOf({ plate, kinds, worth }: PlateCase): number | null {
  const raster = rasterOf(plate, kinds, { mostX: 2000, mostY: 300, relaxed: false });
  if (raster === null) return null;
  const bands = bandsOf(plate, raster);
  const memory = memoryFor(raster, bands, openScratch());
  const pricing: Pricing = { plate, raster, bands, memory, worth, caps: null, meter: { spent: 0 } };
  valueStacks(pricing);
  return clearPlate(pricing).tail[0]!;
}

describe('what a plate promises if nothing were blocked', () => {
  it('is never less than its best pattern is worth, and seldom more where nothing is blocked', () => {
    const seen = { clear: 0, met: 0, flawed: 0 };
    for (let seed = 1; seed <= 600; seed += 1) {
      const given = plateCase(seed, true);
      const promise = promiseOf(given);
      if (promise === null) continue;
      const clear = { ...given, plate: { ...given.plate, clearances: given.plate.clearances.map(() => []) } };
      const most = mostWorth(clear.plate, clear.kinds, clear.worth);
      expect(promise, `seed ${seed}`).toBeGreaterThanOrEqual(
        mostWorth(given.plate, given.kinds, given.worth) - 1e-9,
      );
      const isClear = given.plate.clearances.every((list) => list.length === 0);
      seen[isClear ? 'clear' : 'flawed'] += 1;
      if (isClear && promise <= most + 1e-9) seen.met += 1;
    }
    expect(Math.min(seen.clear, seen.flawed)).toBeGreaterThan(100);
    // Where the end of the plate or the shortest rip rounds a length it may be a little more.
    expect(seen.met).toBeGreaterThan(0.9 * seen.clear);
  });
});
