import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, collide, freeBoxes, grown } from '../../src/flow/sheet/board/box.ts';

const least = { w: 1, h: 1 };
const small = fc.record({
  x: fc.integer({ min: 0, max: 9 }),
  y: fc.integer({ min: 0, max: 9 }),
  w: fc.integer({ min: 1, max: 6 }),
  h: fc.integer({ min: 1, max: 6 }),
});

describe('freeBoxes', () => {
  it('gives the whole box when nothing is in the way', () => {
    const box = { x: 2, y: 3, w: 10, h: 5 };
    expect(freeBoxes(box, [], least)).toEqual([box]);
  });

  it('splits round a hole in the middle into the four largest boxes', () => {
    const free = freeBoxes({ x: 0, y: 0, w: 10, h: 10 }, [{ x: 4, y: 4, w: 2, h: 2 }], least);
    expect(free).toHaveLength(4);
    expect(free).toContainEqual({ x: 0, y: 0, w: 4, h: 10 });
    expect(free).toContainEqual({ x: 0, y: 6, w: 10, h: 4 });
  });

  it('touches no obstacle, leaves the box nowhere, and covers every free cell', () => {
    fc.assert(
      fc.property(fc.array(small, { maxLength: 5 }), (obstacles) => {
        const whole: Box = { x: 1, y: 1, w: 11, h: 9 };
        const free = freeBoxes(whole, obstacles, least);
        for (const box of free) {
          expect(obstacles.some((obstacle) => collide(obstacle, box))).toBe(false);
          expect(box.x >= 1 && box.y >= 1 && box.x + box.w <= 12 && box.y + box.h <= 10).toBe(true);
        }
        for (let x = 1; x < 12; x += 1)
          for (let y = 1; y < 10; y += 1) {
            const cell = { x, y, w: 1, h: 1 };
            const isTaken = obstacles.some((obstacle) => collide(obstacle, cell));
            expect(free.some((box) => collide(box, cell))).toBe(!isTaken);
          }
      }),
    );
  });

  it('drops what is too small to hold anything', () => {
    const free = freeBoxes({ x: 0, y: 0, w: 10, h: 10 }, [{ x: 2, y: 0, w: 2, h: 10 }], { w: 3, h: 3 });
    expect(free).toEqual([{ x: 4, y: 0, w: 6, h: 10 }]);
  });
});

describe('boxes', () => {
  it('that only touch do not collide', () => {
    expect(collide({ x: 0, y: 0, w: 2, h: 2 }, { x: 2, y: 0, w: 2, h: 2 })).toBe(false);
    expect(collide({ x: 0, y: 0, w: 3, h: 2 }, { x: 2, y: 1, w: 2, h: 2 })).toBe(true);
  });

  it('shrink to nothing, not below', () => {
    expect(grown({ x: 5, y: 5, w: 4, h: 40 }, -3)).toEqual({ x: 8, y: 8, w: 0, h: 34 });
  });
});
