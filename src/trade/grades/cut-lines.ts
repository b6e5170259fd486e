import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { CuttingSize } from './cutting-size.ts';

/** The only places where sides of best cuttings need to lie: x lines across the board, y lines along it; ascending. */
export interface CutLines {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/**
 * Lines that suffice for the largest total area of at most `atMost` cuttings.
 *
 * Why these suffice. Fix, in a best answer, which side of what each cutting lies on: left of this hole, below that
 * cutting. With the y sides held still, the total area is linear in the x sides, and all that the x sides must obey are
 * differences: x ≤ hole, end ≤ next start, end − start ≥ least length. So some best answer is a vertex of that
 * polytope: every x side is tied to an edge of the board or of a hole by a chain of touching sides and of cuttings at
 * their least length, each cutting at most once. Hence x = edge ± least lengths, summed. Then the same for y with the
 * x sides held still. Edges alone do not suffice: a wide cutting may give way to a narrow one just until the narrow one
 * reaches its least length. (With a least area instead of least sides, 3B, this does not hold: no such lines exist.)
 */
export function cutLines(
  board: Rectangle,
  blocked: readonly Rectangle[],
  size: CuttingSize,
  atMost: number,
): CutLines {
  const xs = blocked.flatMap((hole) => [hole.x, hole.x + hole.length]);
  const ys = blocked.flatMap((hole) => [hole.y, hole.y + hole.width]);
  const lengths = size.leastSizes.map(({ length }) => length);
  const widths = size.leastSizes.map(({ width }) => width);
  return {
    x: chained([board.x, board.x + board.length, ...xs], lengths, atMost, board.x, board.x + board.length),
    y: chained([board.y, board.y + board.width, ...ys], widths, atMost, board.y, board.y + board.width),
  };
}

/** Edges plus and minus up to `terms` of the steps, within [from, to]. A chain may leave the board and come back. */
function chained(edges: number[], steps: number[], terms: number, from: number, to: number): number[] {
  let offsets = new Set([0]);
  for (let term = 0; term < terms; term += 1) {
    const next = new Set(offsets);
    for (const offset of offsets) {
      for (const step of steps) {
        if (Math.abs(offset + step) <= to - from) next.add(offset + step);
        if (Math.abs(offset - step) <= to - from) next.add(offset - step);
      }
    }
    if (next.size === offsets.size) break;
    offsets = next;
  }
  const lines = new Set<number>();
  for (const edge of edges) {
    for (const offset of offsets) {
      const line = edge + offset;
      if (line >= from && line <= to) lines.add(line);
    }
  }
  return [...lines].sort((a, b) => a - b);
}
