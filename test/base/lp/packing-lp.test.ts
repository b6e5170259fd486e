import type { Highs } from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { type LpAnswer, type LpRow, openPackingLp } from '../../../src/base/lp/packing-lp.ts';
import { seeded } from '../../laws/seeded.ts';
import { outsideSolver } from './outside-solver.ts';
import { type Program, asText, openProgram, patternRow } from './random-program.ts';

/** Loaded once. */
const loaded: { highs?: Highs } = {};

beforeAll(async () => {
  loaded.highs = await outsideSolver();
});

function outsideOptimum(program: Program): number | 'unbounded' {
  const { Status, ObjectiveValue } = loaded.highs!.solve(asText(program), { output_flag: false });
  if (Status === 'Unbounded' || Status === 'Primal infeasible or unbounded') return 'unbounded';
  if (Status !== 'Optimal') throw new Error(`the independent solver says ${Status}`);
  return ObjectiveValue;
}

/** Whether the answer is the optimum by the independent solver, and says so; an unbounded program has none. */
function wrongWith(answer: LpAnswer, program: Program): string[] {
  const right = outsideOptimum(program);
  if (right === 'unbounded') return answer.certified ? ['certified, but the program is unbounded'] : [];
  if (!answer.certified) return ['not certified'];
  const apart = Math.abs(answer.objective - right);
  return apart <= 1e-6 * (1 + Math.abs(right)) ? [] : [`${answer.objective}, not ${right}`];
}

describe('a packing program', () => {
  test('reaches the optimum of an independent solver as rows are added, degenerate or not', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const { making, program, lp } = openProgram(seed);
      expect(wrongWith(lp.solve(), program), `seed ${seed}, first`).toEqual([]);
      for (let round = 1; round <= 4; round += 1) {
        for (let count = making.random.whole(1, 6); count > 0; count -= 1) {
          const row = patternRow(making);
          program.rows.push(row);
          lp.addRow(row);
        }
        expect(wrongWith(lp.solve(), program), `seed ${seed}, round ${round}`).toEqual([]);
      }
    }
  });

  test('reaches it after its costs and limits turn, and in a fork of its own', () => {
    for (let seed = 101; seed <= 140; seed += 1) {
      const { making, program, lp: first } = openProgram(seed);
      const { random, kinds } = making;
      let lp = first;
      for (let round = 1; round <= 5; round += 1) {
        for (let count = random.whole(1, 6); count > 0; count -= 1) {
          const row = patternRow(making);
          program.rows.push(row);
          lp.addRow(row);
        }
        lp.solve();
        const column = random.whole(0, kinds - 1);
        program.objective[column] = random.whole(0, 6);
        lp.setObjective(column, program.objective[column]!);
        const at = random.whole(0, program.rows.length - 1);
        const limit = program.rows[at]!.limit + random.pick([0, 1, 5]);
        program.rows[at] = { ...program.rows[at]!, limit };
        lp.setLimit(at, limit);
        expect(wrongWith(lp.solve(), program), `seed ${seed}, turned in round ${round}`).toEqual([]);
        if (round % 2 === 1) continue;
        const fork = lp.fork(() => random.chance(0.5));
        program.rows = fork.rows.map((row) => program.rows[row]!);
        lp = fork.lp;
        expect(wrongWith(lp.solve(), program), `seed ${seed}, forked in round ${round}`).toEqual([]);
      }
    }
  });

  test('does not certify what is unbounded', () => {
    const lp = openPackingLp([1, 1]);
    lp.addRow({ indices: [0], coefficients: [1], limit: 4 });
    expect(lp.solve().certified).toBe(false);
    lp.addRow({ indices: [1, 0], coefficients: [1, -1], limit: 1 });
    expect(lp.solve()).toMatchObject({ certified: true, objective: 9 });
  });
});

/** Largest breach of each condition of optimality, each relative to the sizes added up in it. */
function breaches(
  { x, rowPrice }: LpAnswer,
  { objective, rows }: { objective: readonly number[]; rows: readonly LpRow[] },
): number {
  let worst = 0;
  const reduced = objective.map((cost) => ({ sum: cost, size: 1 + Math.abs(cost) }));
  let gap = 0;
  let total = 1;
  rows.forEach(({ indices, coefficients, limit }, i) => {
    let sum = -limit;
    let size = 1 + Math.abs(limit);
    indices.forEach((j, k) => {
      sum += coefficients[k]! * x[j]!;
      size += Math.abs(coefficients[k]! * x[j]!);
      reduced[j]!.sum -= coefficients[k]! * rowPrice[i]!;
      reduced[j]!.size += Math.abs(coefficients[k]! * rowPrice[i]!);
    });
    worst = Math.max(worst, sum / size, -rowPrice[i]!);
    gap -= limit * rowPrice[i]!;
  });
  objective.forEach((cost, j) => {
    worst = Math.max(worst, reduced[j]!.sum / reduced[j]!.size, -x[j]! / (1 + Math.abs(x[j]!)));
    gap += cost * x[j]!;
    total += Math.abs(cost * x[j]!);
  });
  return Math.max(worst, Math.abs(gap) / total);
}

describe('a certificate', () => {
  test('keeps its word where rows are scaled badly: what it calls optimal is, to its tolerance', () => {
    let certified = 0;
    for (let seed = 1; seed <= 150; seed += 1) {
      const random = seeded(seed);
      const ten = (least: number, most: number): number => 10 ** random.whole(least, most);
      const objective = Array.from({ length: random.whole(2, 8) }, () => ten(-4, 5));
      const all = objective.map((_, j) => j);
      const rows: LpRow[] = [{ indices: all, coefficients: all.map(() => ten(-3, 3)), limit: ten(-3, 6) }];
      for (let count = random.whole(2, 30); count > 0; count -= 1) {
        const indices = all.filter(() => random.chance(0.5));
        const limit = random.pick([0, ten(-4, 8)]);
        rows.push({ indices, coefficients: indices.map(() => ten(-4, 4)), limit });
      }
      const lp = openPackingLp(objective);
      for (const row of rows) lp.addRow(row);
      const answer = lp.solve();
      if (!answer.certified) continue;
      certified += 1;
      expect(breaches(answer, { objective, rows }), `seed ${seed}`).toBeLessThanOrEqual(1e-6);
    }
    expect(certified).toBeGreaterThan(100);
  });
});
