import { type Rectangle, overlaps } from '../../../src/base/geometry/rectangle.ts';
import { type CuttingTask } from '../../../src/trade/grades/best-cuttings.ts';

/**
 * The largest total area of at most `atMost` disjoint clear cuttings with whole-number sides, by trying every set.
 * Written apart from the search; for boards of a few dozen unit squares.
 */
export function bruteCuttingArea({ board, blocked, size, atMost }: CuttingTask): number {
  const all: Rectangle[] = [];
  for (let x = board.x; x < board.x + board.length; x += 1) {
    for (let y = board.y; y < board.y + board.width; y += 1) {
      for (let length = 1; x + length <= board.x + board.length; length += 1) {
        for (let width = 1; y + width <= board.y + board.width; width += 1) {
          const cutting = { x, y, length, width };
          const large = size.leastSizes.some((least) => width >= least.width && length >= least.length);
          if (large && !blocked.some((hole) => overlaps(hole, cutting))) all.push(cutting);
        }
      }
    }
  }
  all.sort((a, b) => b.length * b.width - a.length * a.width);
  let best = 0;
  const extend = (from: number, taken: readonly Rectangle[], area: number): void => {
    best = Math.max(best, area);
    const left = atMost - taken.length;
    for (let index = from; left > 0 && index < all.length; index += 1) {
      const cutting = all[index]!;
      const cuttingArea = cutting.length * cutting.width;
      if (area + left * cuttingArea <= best) return;
      if (!taken.some((other) => overlaps(other, cutting)))
        extend(index + 1, [...taken, cutting], area + cuttingArea);
    }
  };
  extend(0, [], 0);
  return best;
}
