import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overlaps } from '../../src/base/geometry/rectangle.ts';
import { hasRoom, withRoom } from '../../src/flow/patterns/room.ts';

const rectangle = fc.record({
  x: fc.integer({ min: -2, max: 9 }),
  y: fc.integer({ min: -2, max: 7 }),
  length: fc.integer({ min: 1, max: 6 }),
  width: fc.integer({ min: 1, max: 5 }),
});
const plate = {
  length: 9,
  width: 7,
  crosscutKerf: 1,
  ripKerf: 1,
  shortestRip: 0,
  stages: 4,
};

describe('room for a shape', () => {
  it('is there exactly where some whole position is free', () => {
    const seen = { room: 0, none: 0 };
    fc.assert(
      fc.property(
        fc.array(rectangle, { maxLength: 5 }),
        fc.integer({ min: 1, max: 10 }),
        fc.integer({ min: 1, max: 8 }),
        (blocked, length, width) => {
          let isFree = false;
          for (let x = 0; x + length <= plate.length; x += 1)
            for (let y = 0; y + width <= plate.width; y += 1)
              isFree ||= !blocked.some((r) => overlaps(r, { x, y, length, width }));
          expect(hasRoom(plate, blocked, { length, width })).toBe(isFree);
          seen[isFree ? 'room' : 'none'] += 1;
        },
      ),
      { numRuns: 2000, seed: 3 },
    );
    expect(Math.min(seen.room, seen.none)).toBeGreaterThan(300);
  });

  it('keeps of a kind the clearances that leave some: through the middle only the short one fits', () => {
    const check = { x: 4, y: 0, length: 1, width: 7 };
    const lying = { ...plate, clearances: [[check], []] };
    const kind = (length: number, clearances: number[]) => ({
      shapes: [{ length, width: 2 }],
      cap: 1,
      clearances,
    });
    const kinds = withRoom(lying, [kind(4, [0, 1]), kind(5, [0]), kind(5, [0, 1])]);
    expect(kinds.map(({ clearances }) => clearances)).toEqual([[0, 1], [], [1]]);
  });
});
