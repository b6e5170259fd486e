import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Rectangle } from '../../src/base/geometry/rectangle.ts';
import { ticksPerInch } from '../../src/base/units/tick.ts';
import { type CutNode, type CutProblem, type CutRules, cutTree } from '../../src/flow/cuts/cut-tree.ts';
import { offcutMeasure } from '../../src/flow/cuts/score.ts';
import { type Worth, bestOfAllTrees, impossible } from './every-tree.ts';

const rules: CutRules = {
  crosscutKerf: 1,
  ripKerf: 1,
  shortestRip: 0,
  stages: 4,
  leastOffcutLength: 1,
  leastOffcutWidth: 1,
  offcutsEarn: false,
  offcutWorth: offcutMeasure,
};

const favoured = { lengths: new Set<number>(), widths: new Set<number>() };

/** Cuts and (negated) measure of the leftovers of a tree. */
function worthOf(node: CutNode | null): Worth {
  if (node === null || node.kind === 'piece') return [0, 0];
  if (node.kind === 'leftover') {
    const { length, width } = node.region;
    return [0, -((length / ticksPerInch) ** 3 * (width / ticksPerInch) ** 2)];
  }
  const [before, after] = [worthOf(node.before), worthOf(node.after)];
  return [1 + before[0] + after[0], before[1] + after[1]];
}

const inch = ticksPerInch;

function scaled({ x, y, length, width }: Rectangle): Rectangle {
  return { x: x * inch, y: y * inch, length: length * inch, width: width * inch };
}

/** Up to five pieces that do not overlap on a plate of at most 9 by 7 inches, all on whole inches, cuttable or not. */
const smallProblems = fc
  .record({
    length: fc.integer({ min: 3, max: 9 }),
    width: fc.integer({ min: 2, max: 7 }),
    crosscutKerf: fc.integer({ min: 0, max: 2 }),
    ripKerf: fc.integer({ min: 0, max: 1 }),
    shortestRip: fc.integer({ min: 0, max: 5 }),
    stages: fc.constantFrom<number | 'any'>(1, 2, 3, 4, 5, 'any'),
    wishes: fc.array(
      fc.tuple(fc.nat(8), fc.nat(6), fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 3 })),
      {
        minLength: 1,
        maxLength: 12,
      },
    ),
  })
  .map(({ length, width, wishes, crosscutKerf, ripKerf, shortestRip, stages }): CutProblem => {
    const pieces: Rectangle[] = [];
    for (const [x, y, long, wide] of wishes) {
      const piece = { x, y, length: long, width: wide };
      const fits = x + long <= length && y + wide <= width;
      const isFree = pieces.every(
        (other) =>
          x >= other.x + other.length ||
          other.x >= x + long ||
          y >= other.y + other.width ||
          other.y >= y + wide,
      );
      if (fits && isFree && pieces.length < 5) pieces.push(piece);
    }
    const workpiece = scaled({ x: 0, y: 0, length, width });
    const own = {
      crosscutKerf: crosscutKerf * inch,
      ripKerf: ripKerf * inch,
      shortestRip: shortestRip * inch,
      stages,
    };
    return { workpiece, pieces: pieces.map(scaled), junctions: [], rules: { ...rules, ...own }, favoured };
  });

describe('cutTree', () => {
  test('finds a tree where trying every position finds one, with as few cuts and as large leftovers', () => {
    fc.assert(
      fc.property(smallProblems, (problem) => {
        const tree = cutTree(problem);
        const best = bestOfAllTrees(problem, inch, ticksPerInch);
        expect(tree === null ? impossible : worthOf(tree)).toEqual(best);
      }),
      { numRuns: 300 },
    );
  });
});
