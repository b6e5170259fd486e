import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread } from '../../src/flow/sheet/board/spread.ts';

describe('spread', () => {
  it('leaves what stands apart where it is', () => {
    expect(spread([10, 50, 90], [20, 20, 20], 0, 100)).toEqual([10, 50, 90]);
  });

  it('moves two that meet by half each', () => {
    // Two of 20 wished at 50 and 54 need 20 between centres: 42 and 62.
    expect(spread([50, 54], [20, 20], 0, 100)).toEqual([42, 62]);
  });

  it('keeps off the ends', () => {
    expect(spread([2, 98], [20, 20], 0, 100)).toEqual([10, 90]);
    expect(spread([98, 99], [20, 20], 0, 100)).toEqual([70, 90]);
  });

  it('keeps the order, lets none overlap, and stays inside while there is room', () => {
    const items = fc.array(
      fc.record({ at: fc.integer({ min: -50, max: 450 }), size: fc.integer({ min: 4, max: 60 }) }),
      {
        maxLength: 8,
      },
    );
    fc.assert(
      fc.property(items, (given) => {
        const sorted = [...given].sort((a, b) => a.at - b.at);
        const sizes = sorted.map(({ size }) => size);
        const centres = spread(
          sorted.map(({ at }) => at),
          sizes,
          0,
          500,
        );
        centres.forEach((centre, index) => {
          const half = (sizes[index] ?? 0) / 2;
          expect(Number.isInteger(centre)).toBe(true);
          expect(centre - half).toBeGreaterThanOrEqual(-0.5);
          expect(centre + half).toBeLessThanOrEqual(500.5);
          const next = centres[index + 1];
          if (next !== undefined)
            expect(next - centre).toBeGreaterThanOrEqual(half + (sizes[index + 1] ?? 0) / 2 - 1);
        });
      }),
    );
  });
});
