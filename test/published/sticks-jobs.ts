import { readFileSync } from 'node:fs';
import { ticks } from '../../src/base/units/tick.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { kerflessShop } from './kerfless-shop.ts';

/** One published one-dimensional problem; sources and what is known of the optimum are in the fixture itself. */
export interface StickProblem {
  readonly name: string;
  readonly stock: readonly { readonly length: number; readonly count: number | null }[];
  readonly parts: readonly { readonly length: number; readonly count: number }[];
  readonly known: { readonly kind: string; readonly value: number };
}

export const stickFamilies = [
  'falkenauer',
  'hard28',
  'waescher',
  'scholl',
  'schwerin',
  'multilength_derived',
];

/** All problems of a family. */
export function stickProblems(family: string): readonly StickProblem[] {
  const file = new URL(`../../fixtures/published/1d_${family}.json`, import.meta.url);
  return (JSON.parse(readFileSync(file, 'utf8')) as { instances: StickProblem[] }).instances;
}

const width = ticks(1000);

/**
 * The problem as a job: boards of one width, parts of that width, 1 unit = 1 tick, no kerf. With one stock length a
 * board costs 1, with several its length, so that the goal value is the published one.
 */
export function stickJob(problem: StickProblem): Job {
  const pieces = problem.parts.reduce((sum, part) => sum + part.count, 0);
  return {
    name: problem.name,
    shop: kerflessShop,
    boards: problem.stock.map((stock, index) =>
      plainBoard({
        name: `stick ${index + 1}`,
        length: stock.length,
        width,
        quantity: stock.count ?? pieces,
        cost: problem.stock.length === 1 ? 1 : stock.length,
      }),
    ),
    parts: problem.parts.map((part, index) =>
      plainPart({ name: `part ${index + 1}`, length: part.length, width, quantity: part.count }),
    ),
  };
}
