import type { LpRow, PackingLp } from '../../../src/base/lp/packing-lp.ts';
import { openPackingLp } from '../../../src/base/lp/packing-lp.ts';
import { type Seeded, seeded } from '../../laws/seeded.ts';

/** max objective · x, rows ≤, x ≥ 0, as the test holds it beside the engine. */
export interface Program {
  readonly objective: number[];
  rows: LpRow[];
}

/** The program in the LP format that the independent solver reads. */
export function asText({ objective, rows }: Program): string {
  const term = (factor: number, j: number): string => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} x${j}`;
  const lines = rows.map(
    ({ indices, coefficients, limit }, i) =>
      ` r${i}: ${indices.map((j, k) => term(coefficients[k]!, j)).join(' ')} <= ${limit}`,
  );
  return ['Maximize', ` obj: ${objective.map(term).join(' ')}`, 'Subject To', ...lines, 'End'].join('\n');
}

/** How a random program is made. */
export interface Making {
  readonly random: Seeded;
  readonly kinds: number;
  readonly groups: number;
  /** Board costs; several may be 0 or equal, which makes the program degenerate. */
  readonly costs: readonly number[];
  /** Columns beyond kinds and groups: rows of branching and of caps. */
  readonly sides: number;
}

/**
 * The dual of a restricted master before it has any pattern: one column a kind (worth its demand, at most its
 * penalty), one a group (minus its copies), some for side rows, which may have a worth of either sign.
 */
export function openProgram(seed: number): { making: Making; program: Program; lp: PackingLp } {
  const random = seeded(seed);
  const kinds = random.whole(1, 8);
  const groups = random.whole(1, 6);
  const sides = random.pick([0, 0, 1, 4]);
  const isFree = random.chance(0.3);
  const costs = Array.from({ length: groups }, () =>
    isFree ? random.pick([0, 0, 10, 20]) : random.pick([7.5, random.whole(0, 3000) / 100]),
  );
  const scale = random.pick([1, 1, 10, 1000, 1e5]);
  const objective = [
    ...Array.from({ length: kinds }, () => random.whole(1, 5)),
    ...costs.map(() => -random.whole(1, 2)),
    ...Array.from({ length: sides }, () => random.pick([0, 0, -2, 3])),
  ];
  const rows: LpRow[] = objective.flatMap((_, j) => {
    if (j >= kinds && j < kinds + groups) return [];
    return [{ indices: [j], coefficients: [1], limit: random.whole(1, 30) * 100 * scale }];
  });
  const lp = openPackingLp(objective);
  for (const row of rows) lp.addRow(row);
  return { making: { random, kinds, groups, costs, sides }, program: { objective, rows }, lp };
}

/** A pattern's row: what it holds of some kinds, less its group's price and what side rows say of it, at most its cost. */
export function patternRow({ random, kinds, groups, costs, sides }: Making): LpRow {
  const held = Array.from({ length: kinds }, (_, j) => j).filter(() => random.chance(0.4));
  if (held.length === 0) held.push(random.whole(0, kinds - 1));
  const group = random.whole(0, groups - 1);
  const side = Array.from({ length: sides }, (_, s) => kinds + groups + s).filter(() => random.chance(0.4));
  return {
    indices: [...held, kinds + group, ...side],
    coefficients: [
      ...held.map(() => random.whole(1, 3)),
      -1,
      ...side.map(() => random.pick([1, -1, -2, 2, 3])),
    ],
    limit: costs[group]!,
  };
}
