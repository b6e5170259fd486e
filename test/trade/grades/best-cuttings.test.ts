import { describe, expect, it } from 'vitest';
import { type Rectangle, contains, overlaps } from '../../../src/base/geometry/rectangle.ts';
import { type CuttingTask, bestCuttings } from '../../../src/trade/grades/best-cuttings.ts';
import { isCutting } from '../../../src/trade/grades/cutting-size.ts';
import { bruteCuttingArea } from './brute-cuttings.ts';
import { seeded } from '../../laws/seeded.ts';

function randomTask(seed: number): CuttingTask {
  const { whole } = seeded(seed);
  const draw = (below: number): number => whole(0, below - 1);
  const board = { x: 0, y: 0, length: 4 + draw(7), width: 2 + draw(4) };
  const blocked = Array.from({ length: draw(6) }, (): Rectangle => {
    const [x, y] = [draw(board.length), draw(board.width)];
    return { x, y, length: 1 + draw(2), width: 1 + draw(2) };
  });
  const leastSizes = [
    { width: 1 + draw(2), length: 1 + draw(4) },
    { width: 1 + draw(3), length: 1 + draw(3) },
  ].slice(0, 1 + draw(2));
  return { board, blocked, size: { leastSizes, leastArea: 0 }, atMost: 1 + draw(4) };
}

describe('the largest total area of at most k clear cuttings', () => {
  it('is what trying every set finds, on 500 small random boards', () => {
    for (let seed = 1; seed <= 500; seed += 1) {
      const task = Object.freeze(randomTask(seed));
      const answer = bestCuttings(task, 1e6);
      const brute = bruteCuttingArea(task);
      expect([seed, answer.area, answer.bound]).toEqual([seed, brute, brute]);
      expectLawful(task, answer.cuttings, answer.area);
    }
  });

  it('keeps a true bound when it may not search long, and says no more than it knows', () => {
    let open = 0;
    for (let seed = 1; seed <= 200; seed += 1) {
      const task = randomTask(seed);
      const { area } = bestCuttings(task, 1e6);
      const hasty = bestCuttings(task, 3);
      expect(hasty.area).toBeLessThanOrEqual(area);
      expect(hasty.bound).toBeGreaterThanOrEqual(area);
      if (hasty.bound > hasty.area) open += 1;
    }
    expect(open).toBeGreaterThan(5);
  });

  it('asked for enough, tells whether there is enough', () => {
    for (let seed = 1; seed <= 200; seed += 1) {
      const task = randomTask(seed);
      const { area } = bestCuttings(task, 1e6);
      expect(bestCuttings(task, 1e6, area).area).toBe(area);
      const tooMuch = bestCuttings(task, 1e6, area + 1);
      expect(tooMuch.bound).toBeLessThan(area + 1);
      expectLawful(task, tooMuch.cuttings, tooMuch.area);
    }
  });

  it('finds the four round a knot that no through cut can part', () => {
    // 6 x 6 with the middle 2 x 2 spoilt; each cutting 2 x 4 or 4 x 2, turning round the knot.
    const knot = { x: 2, y: 2, length: 2, width: 2 };
    const board = { x: 0, y: 0, length: 6, width: 6 };
    const leastSizes = [
      { width: 2, length: 4 },
      { width: 4, length: 2 },
    ];
    const answer = bestCuttings(
      { board, blocked: [knot], size: { leastSizes, leastArea: 0 }, atMost: 4 },
      1e5,
    );
    expect([answer.area, answer.bound, answer.cuttings.length]).toEqual([32, 32, 4]);
  });

  it('lets a wide cutting give way to a narrow one just as far as that one needs', () => {
    // 8 wide up to 9, then 5 wide up to 12. 8 x 7 and 5 x 5 beat 8 x 9 alone, and 7 is no edge of anything.
    const blocked = [{ x: 9, y: 5, length: 3, width: 3 }];
    const board = { x: 0, y: 0, length: 12, width: 8 };
    const leastSizes = [{ width: 5, length: 5 }];
    const answer = bestCuttings({ board, blocked, size: { leastSizes, leastArea: 0 }, atMost: 2 }, 1e5);
    expect([answer.area, answer.bound]).toEqual([8 * 7 + 5 * 5, 8 * 7 + 5 * 5]);
  });
});

function expectLawful(task: CuttingTask, cuttings: readonly Rectangle[], area: number): void {
  expect(cuttings.length).toBeLessThanOrEqual(task.atMost);
  expect(cuttings.reduce((sum, cutting) => sum + cutting.length * cutting.width, 0)).toBe(area);
  cuttings.forEach((cutting, index) => {
    expect(isCutting(cutting, task.size)).toBe(true);
    expect(contains(task.board, cutting)).toBe(true);
    expect(task.blocked.some((hole) => overlaps(hole, cutting))).toBe(false);
    expect(cuttings.slice(index + 1).some((other) => overlaps(other, cutting))).toBe(false);
  });
}
