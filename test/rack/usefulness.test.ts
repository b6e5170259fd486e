import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { clearRectangles } from '../../src/flow/rack/clear-rectangles.ts';
import { needsOf, usualNeeds } from '../../src/flow/rack/need.ts';
import { totalUsefulness, usefulness, type Leftover } from '../../src/flow/rack/usefulness.ts';
import { isUnsound, liesOn } from '../../src/flow/stock/defect.ts';
import { anyDefect } from './arbitraries.ts';

const kerf = { rip: inches(1 / 8), crosscut: inches(1 / 8) };
const clear = (length: number, width: number): Leftover => ({
  length: Math.round(length * 8128),
  width: Math.round(width * 8128),
  dressedThickness: inches(13 / 16),
  defects: [],
});
const anyNeeds = fc
  .array(
    fc.record({
      count: fc.integer({ min: 1, max: 9 }),
      length: fc.integer({ min: 4, max: 60 }).map(inches),
      width: fc.integer({ min: 1, max: 8 }).map(inches),
      thickness: fc.constant(inches(3 / 4)),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map(needsOf);

describe('which offcut to leave', () => {
  it('one long clear piece beats three short ones of the same wood', () => {
    // 72 in in one, or sawn by two cuts of 1/8 in into three of 23 11/12 in.
    const three = Array.from({ length: 3 }, () => clear((72 - 0.25) / 3, 6));
    expect(usefulness(clear(72, 6), usualNeeds, kerf)).toBeGreaterThan(
      totalUsefulness(three, usualNeeds, kerf),
    );
    expect(usefulness(clear(36, 6), usualNeeds, kerf)).toBeGreaterThan(
      totalUsefulness([clear(36, 2.9375), clear(36, 2.9375)], usualNeeds, kerf),
    );
  });

  it('cutting a clear piece in two never makes it more useful, whatever the history', () => {
    fc.assert(
      fc.property(
        anyNeeds,
        fc.integer({ min: 8, max: 90 }),
        fc.integer({ min: 2, max: 12 }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (needs, length, width, share) => {
          const whole = usefulness(clear(length, width), needs, kerf);
          const first = length * share;
          const apart = [clear(first, width), clear(length - first - 0.125, width)].filter(
            (one) => one.length > 0,
          );
          expect(whole).toBeGreaterThanOrEqual(totalUsefulness(apart, needs, kerf) - 1e-3);
          expect(whole).toBeLessThanOrEqual(clear(length, width).length * clear(length, width).width + 1e-3);
          expect(usefulness(clear(length + 1, width), needs, kerf)).toBeGreaterThanOrEqual(whole);
        },
      ),
    );
  });

  it('by hand: 10 × 4 in for two needs of 5 × 2 and 4 × 4, three of the first to one of the second', () => {
    const needs = needsOf([
      { count: 3, length: inches(5), width: inches(2), thickness: inches(0.75) },
      { count: 1, length: inches(4), width: inches(4), thickness: inches(0.75) },
      { count: 4, length: inches(4), width: inches(4), thickness: inches(1) },
    ]);
    // Without kerf: 2·2 of 10 sq in (share 3/8), 2 of 16 sq in (1/8); the thick ones cannot come from it (4/8).
    const square = 8128 * 8128;
    expect(usefulness(clear(10, 4), needs, { rip: 0, crosscut: 0 }) / square).toBeCloseTo(
      40 * (3 / 8) + 32 / 8,
      9,
    );
  });

  it('a defect lessens it, unless the other face is clear and the defect sound', () => {
    const knot = {
      kind: 'sound knot',
      face: 'A',
      x: inches(10),
      y: inches(2),
      length: inches(2),
      width: inches(2),
    } as const;
    const whole = usefulness(clear(40, 6), usualNeeds, kerf);
    expect(usefulness({ ...clear(40, 6), defects: [knot] }, usualNeeds, kerf)).toBe(whole);
    const through = { ...knot, face: 'through' } as const;
    expect(usefulness({ ...clear(40, 6), defects: [through] }, usualNeeds, kerf)).toBeLessThan(whole);
    const unsound = { ...knot, kind: 'check' } as const;
    expect(usefulness({ ...clear(40, 6), defects: [unsound] }, usualNeeds, kerf)).toBeLessThan(whole);
  });

  it('the usual needs are shares that sum to one', () => {
    expect(usualNeeds.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(needsOf([])).toBe(usualNeeds);
  });
});

describe('clear rectangles of a piece', () => {
  it('hold no defect that matters, and any clear rectangle lies within one of them', () => {
    const box = { length: 9, width: 6 };
    fc.assert(
      fc.property(
        fc.array(anyDefect(box.length, box.width), { maxLength: 4 }),
        fc.nat(8),
        fc.nat(5),
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 6 }),
        (defects, x, y, length, width) => {
          const found = clearRectangles({ ...box, defects });
          const free = (
            face: 'A' | 'B',
            one: { x: number; y: number; length: number; width: number },
          ): boolean =>
            defects.every(
              (defect) =>
                !(liesOn(defect, face) || isUnsound(defect.kind)) ||
                defect.x >= one.x + one.length ||
                one.x >= defect.x + defect.length ||
                defect.y >= one.y + one.width ||
                one.y >= defect.y + defect.width,
            );
          for (const one of found) expect(free('A', one) || free('B', one)).toBe(true);
          const asked = { x, y, length: Math.min(length, 9 - x), width: Math.min(width, 6 - y) };
          if (!free('A', asked) && !free('B', asked)) return;
          const within = found.some(
            (one) =>
              one.x <= asked.x &&
              one.y <= asked.y &&
              one.x + one.length >= asked.x + asked.length &&
              one.y + one.width >= asked.y + asked.width,
          );
          expect(within).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });
});
