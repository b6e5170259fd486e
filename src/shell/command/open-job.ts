import { join, resolve } from 'node:path';
import { type Board, type Job, type PlannedParts, type Result, type Shop, planJob } from '../../index.ts';
import type { Problem } from '../print-problem.ts';
import { jobFileNames, readJob, readMantel } from '../read/job.ts';
import { readTextFile } from '../read/text-file.ts';
import { orEnd } from './end.ts';
import type { World } from './world.ts';

/** A job as it was read, and the plan its parts came from when the folder had no `parts.csv`. */
export interface OpenedJob {
  readonly folder: string;
  readonly job: Job;
  readonly planned: PlannedMantel | null;
}

/** A planned mantel with the shop whose units it is shown in. */
export interface PlannedMantel extends PlannedParts {
  readonly shop: Shop;
}

/**
 * Reads a job folder; without a `parts.csv` its parts are planned from `mantel.csv` and `legs.csv`.
 * Ends the command, with all problems on stderr, when anything is wrong.
 */
export async function openJob(given: string, world: World): Promise<OpenedJob> {
  const folder = resolve(world.cwd, given);
  const planned = (await isToBePlanned(folder)) ? await openPlan(folder, world) : null;
  const parts = planned === null ? {} : { parts: planned.parts };
  const job = orEnd(await readJob(folder, parts), world);
  return { folder, job, planned };
}

/** Plans the mantel of a job folder, with the boards at hand in mind if there are any. Ends the command on problems. */
export async function openPlan(folder: string, world: World): Promise<PlannedMantel> {
  const { shop, mantel, legs } = orEnd(await readMantel(folder), world);
  const boards = orEnd(await boardsAtHand(folder), world);
  const style = { units: shop.units, printFraction: shop.printFraction };
  return { shop, ...orEnd(planJob(shop, mantel, legs, boards), world, style) };
}

/** A job without parts but with a measured mantel. One with neither is told that it has no parts. */
async function isToBePlanned(folder: string): Promise<boolean> {
  return !(await isThere(folder, 'parts')) && (await isThere(folder, 'mantel'));
}

async function boardsAtHand(folder: string): Promise<Result<readonly Board[], Problem>> {
  const read = await readJob(folder, { parts: [], boardsNeeded: false });
  return read.ok ? { ok: true, value: read.value.boards } : read;
}

/** Whether the folder has the file, readable or not. */
async function isThere(folder: string, role: keyof typeof jobFileNames): Promise<boolean> {
  const name = jobFileNames[role];
  const text = await readTextFile(join(folder, name), name);
  return !text.ok || text.value !== null;
}
