import { join, resolve } from 'node:path';
import {
  type Board,
  type Job,
  type Part,
  type PlannedParts,
  type Result,
  type Shop,
  planJob,
  success,
} from '../../index.ts';
import type { Problem } from '../print-problem.ts';
import { jobFileNames, readJob, readMantel } from '../read/job.ts';
import { readTextFile } from '../read/text-file.ts';
import { orEnd } from './end.ts';
import { sayCautions } from './say-cautions.ts';
import type { World } from './world.ts';

/** A job as it was read. */
export interface OpenedJob {
  readonly folder: string;
  readonly job: Job;
  /** Boards that the yard offers (`yard.csv`). */
  readonly yard: readonly Board[];
  /** The mantel that the parts make, if they make one as it was measured. */
  readonly mantel: PlannedMantel | null;
  /** Whether the folder had no `parts.csv`, so that the parts are the plan's. */
  readonly isPlanned: boolean;
}

/** A planned mantel with the shop whose units it is shown in. */
export interface PlannedMantel extends PlannedParts {
  readonly shop: Shop;
}

/**
 * Reads a job folder; without a `parts.csv` its parts are planned from `mantel.csv` and `legs.csv`.
 * Ends the command, with all problems on stderr, when anything is wrong.
 * @param otherBoards names that a part may be pinned to beside the job's own boards, such as offcuts of the rack
 * @param buying boards are still to be bought: there may be no `boards.csv`, and the mantel is planned with the yard's
 * boards in mind too
 */
export async function openJob(
  given: string,
  world: World,
  otherBoards: readonly string[] = [],
  buying = false,
): Promise<OpenedJob> {
  const folder = resolve(world.cwd, given);
  const needs = { otherBoards, boardsNeeded: !buying };
  if (!(await isThere(folder, 'parts')) && (await isThere(folder, 'mantel'))) {
    const mantel = await openPlan(folder, world, buying);
    const job = orEnd(await readJob(folder, { ...needs, parts: mantel.parts }), world);
    sayCautions(job.cautions, world);
    return { folder, job, yard: job.yard, mantel, isPlanned: true };
  }
  const job = orEnd(await readJob(folder, needs), world);
  sayCautions(job.cautions, world);
  return { folder, job, yard: job.yard, mantel: await mantelOf(folder, job, world), isPlanned: false };
}

/**
 * Plans the mantel of a job folder, with the boards at hand in mind if there are any (and the yard's, when buying). Ends
 * the command on problems.
 */
export async function openPlan(folder: string, world: World, buying = false): Promise<PlannedMantel> {
  const { shop, mantel, legs, cautions } = orEnd(await readMantel(folder), world);
  sayCautions(cautions, world);
  const boards = orEnd(await boardsAtHand(folder, buying), world);
  const style = { units: shop.units, printFraction: shop.printFraction };
  return { shop, ...orEnd(planJob(shop, mantel, legs, boards), world, style) };
}

/**
 * The measured mantel of a job that has its parts already; null when there is none, when it cannot be read or built, or
 * when the parts have been changed so that its drawings would show another mantel.
 */
async function mantelOf(
  folder: string,
  { shop, boards, parts }: Job,
  world: World,
): Promise<PlannedMantel | null> {
  const measured = await readMantel(folder);
  if (!measured.ok) return null;
  sayCautions(measured.value.cautions, world);
  const planned = planJob(shop, measured.value.mantel, measured.value.legs, boards);
  if (!planned.ok) return null;
  const byName = new Map(parts.map((part) => [part.name, part]));
  const isUnchanged = planned.value.parts.every((part) => hasSameSize(part, byName.get(part.name)));
  return isUnchanged ? { shop, ...planned.value } : null;
}

function hasSameSize(planned: Part, part: Part | undefined): boolean {
  return (
    part !== undefined &&
    part.quantity === planned.quantity &&
    part.length === planned.length &&
    part.width === planned.width &&
    part.thickness === planned.thickness
  );
}

async function boardsAtHand(folder: string, buying: boolean): Promise<Result<readonly Board[], Problem>> {
  const read = await readJob(folder, { parts: [], boardsNeeded: false });
  if (!read.ok) return read;
  return success([...read.value.boards, ...(buying ? read.value.yard : [])]);
}

/** Whether the folder has the file, readable or not. */
async function isThere(folder: string, role: keyof typeof jobFileNames): Promise<boolean> {
  const name = jobFileNames[role];
  const text = await readTextFile(join(folder, name), name);
  return !text.ok || text.value !== null;
}
