import { readFileSync } from 'node:fs';
import { ticks } from '../../src/base/units/tick.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { kerflessShop } from './kerfless-shop.ts';

/** Families of published plates that can be put as a job; those in two stages with free trimming cannot. */
export const plateJobFamilies = [
  'unconstrained_guillotine_value',
  'constrained_guillotine_value',
  'defects_derived',
  'multi_plate_value',
  'guillotine_bins',
] as const;

export type PlateJobFamily = (typeof plateJobFamilies)[number];

/** A published problem as a job, and its published optimum (for the derived ones that computed when they were made). */
export interface PlateJob {
  readonly name: string;
  readonly job: Job;
  readonly optimum: number;
}

interface Size {
  readonly length: number;
  readonly width: number;
}

interface Published {
  readonly name: string;
  readonly rotation?: boolean;
  readonly stock: readonly (Size & {
    readonly count: number | null;
    readonly defects?: readonly (Size & { x: number; y: number })[];
  })[];
  readonly parts: readonly (Size & { readonly count: number | null; readonly value?: number })[];
  readonly known: { readonly value: number };
}

/** All problems of a family. */
export function plateJobs(family: PlateJobFamily): readonly PlateJob[] {
  const file = new URL(`../../fixtures/published/2d_${family}.json`, import.meta.url);
  const { instances } = JSON.parse(readFileSync(file, 'utf8')) as { instances: Published[] };
  const goal = family === 'guillotine_bins' ? 'least cost' : 'most value';
  return instances.map((problem) => ({
    name: problem.name,
    job: toJob(problem, goal),
    optimum: problem.known.value,
  }));
}

/**
 * 1 unit = 1 tick, no kerf, no trim, no limit of stages; a plate costs 1. A part without limit is wanted as often as the
 * plate could hold it alone.
 */
function toJob({ name, rotation, stock, parts }: Published, goal: 'least cost' | 'most value'): Job {
  const [plate] = stock;
  const wanted = parts.map(
    (part) => part.count ?? Math.floor(plate!.length / part.length) * Math.floor(plate!.width / part.width),
  );
  const pieces = wanted.reduce((sum, count) => sum + count, 0);
  return {
    name,
    shop: {
      ...kerflessShop,
      offcutCredit: 0,
      stages: 'any',
      goal,
    },
    boards: stock.map((board, index) =>
      plainBoard({
        name: `plate ${index + 1}`,
        length: board.length,
        width: board.width,
        quantity: board.count ?? pieces,
        defects: (board.defects ?? []).map(({ x, y, length, width }) => ({
          kind: 'hole',
          face: 'through',
          x: ticks(x),
          y: ticks(y),
          length: ticks(length),
          width: ticks(width),
        })),
      }),
    ),
    parts: parts.map((part, index) =>
      plainPart({
        name: `part ${index + 1}`,
        length: part.length,
        width: part.width,
        quantity: wanted[index]!,
        grain: rotation === true ? 'any' : 'along',
        value: part.value ?? null,
      }),
    ),
  };
}
