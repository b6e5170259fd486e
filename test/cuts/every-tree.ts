import type { Rectangle } from '../../src/base/geometry/rectangle.ts';
import type { CutProblem } from '../../src/flow/cuts/cut-tree.ts';

/** Cuts, then the measure of the leftovers, negated: the smaller in this order is the better. */
export type Worth = readonly [cuts: number, measure: number];

export const impossible: Worth = [Infinity, 0];

const free: Worth = [0, 0];

function isBetter(a: Worth, b: Worth): boolean {
  return a[0] < b[0] || (a[0] === b[0] && a[1] < b[1]);
}

function isWithin(piece: Rectangle, r: Rectangle): boolean {
  return (
    piece.x >= r.x &&
    piece.y >= r.y &&
    piece.x + piece.length <= r.x + r.length &&
    piece.y + piece.width <= r.y + r.width
  );
}

/** The workpieces that a blade entering at `at` leaves. */
function sidesOf(kind: 'crosscut' | 'rip', r: Rectangle, at: number, kerf: number): Rectangle[] {
  const [start, size] = kind === 'crosscut' ? [r.x, r.length] : [r.y, r.width];
  const spans = [
    [start, at],
    [at + kerf, start + size],
  ] as const;
  return spans
    .filter(([from, to]) => to > from)
    .map(([from, to]) =>
      kind === 'crosscut' ? { ...r, x: from, length: to - from } : { ...r, y: from, width: to - from },
    );
}

/**
 * The best that trying every position, in steps of a unit, at every workpiece can reach: fewest cuts, and among those
 * the largest sum of area² × length (inches) of the leftovers. Slow, short, and apart from the
 * product.
 */
export function bestOfAllTrees(problem: CutProblem, unit: number, ticksPerInch: number): Worth {
  const { rules, pieces: all } = problem;
  const memo = new Map<string, Worth>();
  const solve = (r: Rectangle, pieces: readonly Rectangle[], stage: number): Worth => {
    const [only] = pieces;
    if (only === undefined) {
      const [length, width] = [r.length / ticksPerInch, r.width / ticksPerInch];
      return [0, -(length ** 3 * width ** 2)];
    }
    if (pieces.length === 1 && only.length === r.length && only.width === r.width) return free;
    const key = JSON.stringify([r, stage]);
    const known = memo.get(key);
    if (known !== undefined) return known;
    let best = impossible;
    for (const kind of ['crosscut', 'rip'] as const) {
      const odd = kind === 'crosscut' ? 1 : 0;
      const next = stage === 0 ? 2 - odd : stage % 2 === odd ? stage : stage + 1;
      if (rules.stages !== 'any' && next > rules.stages) continue;
      if (kind === 'rip' && r.length < rules.shortestRip) continue;
      const kerf = kind === 'crosscut' ? rules.crosscutKerf : rules.ripKerf;
      const [start, size] = kind === 'crosscut' ? [r.x, r.length] : [r.y, r.width];
      for (let at = start - kerf + unit; at < start + size; at += unit) {
        const sides = sidesOf(kind, r, at, kerf);
        const held = sides.map((side) => pieces.filter((piece) => isWithin(piece, side)));
        if (sides.length === 0 || held.flat().length < pieces.length) continue;
        const parts = sides.map((side, index) => solve(side, held[index] ?? [], next));
        const sum: Worth = [
          parts.reduce((total, [cuts]) => total + cuts, 1),
          parts.reduce((total, [, measure]) => total + measure, 0),
        ];
        if (Number.isFinite(sum[0]) && isBetter(sum, best)) best = sum;
      }
    }
    memo.set(key, best);
    return best;
  };
  return solve(problem.workpiece, all, 0);
}
