import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type LpRow, openPackingLp } from '../../src/base/lp/packing-lp.ts';

const columns = 4;
const limits = fc.integer({ min: 0, max: 9 });
const costs = fc.array(fc.integer({ min: -3, max: 9 }), { minLength: columns, maxLength: columns });
const rows = fc
  .record({
    coefficients: fc.array(fc.integer({ min: 0, max: 5 }), { minLength: columns, maxLength: columns }),
    limit: limits,
  })
  .map(({ coefficients, limit }): LpRow => ({ indices: [0, 1, 2, 3], coefficients, limit }));

/** A row over all columns keeps every program bounded. */
const box: LpRow = { indices: [0, 1, 2, 3], coefficients: [1, 1, 1, 1], limit: 20 };

function fresh(objective: readonly number[], given: readonly LpRow[]): number {
  const lp = openPackingLp(objective);
  for (const row of given) lp.addRow(row);
  const answer = lp.solve();
  expect(answer.certified).toBe(true);
  return answer.objective;
}

test('a program turned to other costs and limits, and its fork, have the optimum of one opened afresh', () => {
  fc.assert(
    fc.property(
      costs,
      costs,
      fc.array(fc.tuple(rows, limits), { minLength: 1, maxLength: 6 }),
      rows,
      (first, second, given, more) => {
        const lp = openPackingLp(first);
        lp.addRow(box);
        for (const [row] of given) lp.addRow(row);
        expect(lp.solve().objective).toBeCloseTo(fresh(first, [box, ...given.map(([row]) => row)]), 6);
        second.forEach((cost, j) => lp.setObjective(j, cost));
        given.forEach(([, limit], i) => lp.setLimit(i + 1, limit));
        const changed = [box, ...given.map(([row, limit]) => ({ ...row, limit }))];
        const { lp: fork, rows: kept } = lp.fork(() => true);
        expect(kept).toHaveLength(changed.length);
        expect(lp.solve().objective).toBeCloseTo(fresh(second, changed), 6);
        fork.addRow(more);
        expect(fork.solve().objective).toBeCloseTo(fresh(second, [...changed, more]), 6);
        const { lp: lean } = fork.fork((row) => row === 0);
        expect(lean.solve().objective).toBeCloseTo(fresh(second, [...changed, more]), 6);
      },
    ),
    { numRuns: 150 },
  );
});
