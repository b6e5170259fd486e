import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Rectangle } from '../../../src/base/geometry/rectangle.ts';
import { random, whole } from '../../../src/base/random/random.ts';
import { bestGuillotine } from '../../../src/flow/patterns/guillotine/best-guillotine.ts';
import { prepareGuillotine } from '../../../src/flow/patterns/guillotine/prepare-guillotine.ts';
import { patternFaults } from './pattern-faults.ts';
import type { Case } from './random-plate.ts';
import { randomCase } from './random-plate.ts';

/** A plate larger than the brute force could do, of any of the kinds that `randomCase` draws, scaled up. */
const cases = fc.integer({ min: 0, max: 1e6 }).map((seed): Case => {
  const stream = random(seed, 1);
  const { plate, kinds, worth } = randomCase(stream);
  const larger = <R extends { length: number; width: number }>(size: R): R => ({
    ...size,
    length: 3 * size.length + whole(stream, 0, 2),
    width: 3 * size.width + whole(stream, 0, 2),
  });
  const moved = (block: Rectangle): Rectangle => ({ ...larger(block), x: 3 * block.x, y: 3 * block.y });
  return {
    plate: { ...larger(plate), clearances: plate.clearances.map((blocks) => blocks.map(moved)) },
    kinds: kinds.map((kind) => {
      const [shape] = kind.shapes.map(larger);
      const turned = { length: shape!.width, width: shape!.length };
      return { ...kind, shapes: kind.shapes.length > 1 ? [shape!, turned] : [shape!] };
    }),
    worth,
  };
});

/** The proven optimum. */
function optimum({ plate, kinds, worth }: Case): number {
  const { pattern, bound, proven } = bestGuillotine(plate, kinds, worth, { work: 1e9, seed: 1 });
  expect(patternFaults(plate, kinds, worth, pattern)).toEqual([]);
  expect(proven).toBe(true);
  expect(bound).toBe(pattern.value);
  return pattern.value;
}

const runs = { numRuns: 60 };

describe('the optimum', () => {
  it('is the same on the plate seen in a mirror', () => {
    fc.assert(
      fc.property(cases, fc.boolean(), (given, along) => {
        const { plate } = given;
        const mirrored = (block: Rectangle): Rectangle =>
          along
            ? { ...block, x: plate.length - block.x - block.length }
            : { ...block, y: plate.width - block.y - block.width };
        const clearances = plate.clearances.map((blocks) => blocks.map(mirrored));
        expect(optimum({ ...given, plate: { ...plate, clearances } })).toBe(optimum(given));
      }),
      runs,
    );
  });

  it('is the same with the kinds in another order', () => {
    fc.assert(
      fc.property(cases, (given) => {
        const turned = { ...given, kinds: given.kinds.toReversed(), worth: given.worth.toReversed() };
        expect(optimum(turned)).toBe(optimum(given));
      }),
      runs,
    );
  });

  it('is the same when all lengths are a number of times as large', () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: 2, max: 400 }), (given, times) => {
        const { plate, kinds } = given;
        const size = <S extends { length: number; width: number }>(old: S): S => ({
          ...old,
          length: times * old.length,
          width: times * old.width,
        });
        const scaled = {
          ...size(plate),
          crosscutKerf: times * plate.crosscutKerf,
          ripKerf: times * plate.ripKerf,
          shortestRip: times * plate.shortestRip,
          clearances: plate.clearances.map((blocks) =>
            blocks.map((block) => ({ ...size(block), x: times * block.x, y: times * block.y })),
          ),
        };
        const shaped = kinds.map((kind) => ({ ...kind, shapes: kind.shapes.map(size) }));
        expect(optimum({ ...given, plate: scaled, kinds: shaped })).toBe(optimum(given));
      }),
      runs,
    );
  });

  it('is no worse with a defect less', () => {
    fc.assert(
      fc.property(cases, (given) => {
        const clearances = given.plate.clearances.map((blocks) => blocks.slice(1));
        expect(optimum({ ...given, plate: { ...given.plate, clearances } })).toBeGreaterThanOrEqual(
          optimum(given),
        );
      }),
      runs,
    );
  });

  it('is no worse with a thinner blade on a clear plate', () => {
    fc.assert(
      fc.property(cases, (given) => {
        const clear = { ...given.plate, clearances: given.plate.clearances.map(() => []) };
        const thin = { ...clear, crosscutKerf: 0, ripKerf: 0 };
        expect(optimum({ ...given, plate: thin })).toBeGreaterThanOrEqual(
          optimum({ ...given, plate: clear }),
        );
      }),
      runs,
    );
  });

  it('is no better with fewer stages, smaller caps or a longer shortest rip', () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: 1, max: 4 }), (given, stages) => {
        const free = { ...given, plate: { ...given.plate, stages: 'any' as const } };
        const most = optimum(free);
        expect(optimum({ ...free, plate: { ...free.plate, stages } })).toBeLessThanOrEqual(most);
        const fewer = free.kinds.map((kind) => ({ ...kind, cap: kind.cap - 1 }));
        expect(optimum({ ...free, kinds: fewer })).toBeLessThanOrEqual(most);
        const longer = { ...free.plate, shortestRip: free.plate.shortestRip + 4 };
        expect(optimum({ ...free, plate: longer })).toBeLessThanOrEqual(most);
      }),
      runs,
    );
  });
});

describe('a plate with too many cut places for the limits', () => {
  it('still gives patterns that can be cut and bounds that hold', () => {
    let thinned = 0;
    for (let seed = 0; seed < 200; seed++) {
      const [given] = fc.sample(cases, { numRuns: 1, seed });
      const { plate, kinds, worth } = given!;
      const prepared = prepareGuillotine(plate, kinds, { limits: { passWork: 300, states: 200 } });
      const { pattern, bound, proven } = prepared.price(worth, undefined, { work: 1e7, seed });
      thinned += prepared.isThinned ? 1 : 0;
      const best = optimum(given!);
      expect(patternFaults(plate, kinds, worth, pattern)).toEqual([]);
      expect(pattern.value).toBeLessThanOrEqual(best);
      expect(bound).toBeGreaterThanOrEqual(best);
      if (proven) expect(pattern.value).toBe(best);
    }
    expect(thinned).toBeGreaterThan(30);
  });
});
