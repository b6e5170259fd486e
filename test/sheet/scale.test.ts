import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { type ScaleWishes, scalesFor } from '../../src/flow/sheet/board/scale.ts';

const wishesOf = (
  length: number,
  width: number,
  narrowest = width,
  goodBreaks: number[] = [],
): ScaleWishes => ({
  length: inches(length),
  width: inches(width),
  narrowest: inches(narrowest),
  goodBreaks: goodBreaks.map(inches),
  parted: (x) => (goodBreaks.map(inches).some((good) => good === x) ? 0 : 1),
  room: 1570,
});

describe('scalesFor', () => {
  it('draws an ordinary board in one or two rows', () => {
    const [best] = scalesFor(wishesOf(96, 11, 4));
    expect(best?.scale.reaches.length).toBe(1);
    // 96 in at 1 : 16 are 6 in of paper, 152.4 mm, of 157 mm there are.
    expect(best?.scale.ratio).toBe(16);
    expect(best?.scale.unit).toBe(16 * 32);
  });

  it('breaks a 16 ft board of 3 in over rows, to scale, at least 9 mm high', () => {
    const [best] = scalesFor(wishesOf(192, 3, 1.25));
    const rows = best?.scale.reaches.length ?? 0;
    expect(rows).toBeGreaterThan(2);
    expect(rows).toBeLessThan(7);
    expect(inches(3) / (best?.scale.unit ?? 1)).toBeGreaterThanOrEqual(90);
  });

  it('breaks where nothing is parted when it can', () => {
    const { scale } =
      scalesFor(wishesOf(120, 9, 3, [59])).find(({ scale: { reaches } }) => reaches.length === 2) ?? {};
    expect(scale?.reaches).toEqual([
      { from: 0, to: inches(59) },
      { from: inches(59), to: inches(120) },
    ]);
  });

  it('covers any board from end to end with rows that fit, and never draws it higher than a page', () => {
    const sizes = fc.record({
      length: fc.integer({ min: 1, max: 400 }),
      width: fc.integer({ min: 1, max: 90 }),
    });
    fc.assert(
      fc.property(sizes, ({ length, width }) => {
        const scales = scalesFor(wishesOf(length, width));
        expect(scales.length).toBeGreaterThan(0);
        for (const { scale } of scales) {
          const ends = [0, ...scale.reaches.map(({ to }) => to)];
          expect(scale.reaches.map(({ from }) => from)).toEqual(ends.slice(0, -1));
          expect(ends.at(-1)).toBe(inches(length));
          for (const { from, to } of scale.reaches) {
            expect(to).toBeGreaterThan(from);
            expect(to - from).toBeLessThanOrEqual(1570 * scale.unit + 1);
          }
          expect(scale.reaches.length * (inches(width) / scale.unit)).toBeLessThanOrEqual(1900);
        }
      }),
    );
  });
});
