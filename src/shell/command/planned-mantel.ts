import { join } from 'node:path';
import { type Board, type PlannedParts, type Result, type Shop, planJob, success } from '../../index.ts';
import type { Problem } from '../print-problem.ts';
import { jobFileNames, readJob, readMantel } from '../read/job.ts';
import { readTextFile } from '../read/text-file.ts';
import { orEnd } from './end.ts';
import { sayCautions } from './say-cautions.ts';
import type { World } from './world.ts';

/** A planned mantel with the shop whose units it is shown in. */
export interface PlannedMantel extends PlannedParts {
  readonly shop: Shop;
}

/**
 * Plans the mantel of a job folder, with the boards at hand in mind if there are any; ends the command on problems.
 * @param buying as of `Opening`
 */
export async function openPlan(folder: string, world: World, buying = false): Promise<PlannedMantel> {
  const { shop, mantel, legs, cautions } = orEnd(await readMantel(folder), world);
  sayCautions(cautions, world);
  const boards = orEnd(await boardsInMind(folder, buying), world);
  const style = { units: shop.units, printFraction: shop.printFraction };
  return { shop, ...orEnd(planJob(shop, mantel, legs, boards), world, style) };
}

/** The same, but null when the mantel cannot be read or built. */
export async function planIfAny(
  folder: string,
  boards: readonly Board[],
  world: World,
): Promise<PlannedMantel | null> {
  const measured = await readMantel(folder);
  if (!measured.ok) return null;
  const { shop, mantel, legs, cautions } = measured.value;
  sayCautions(cautions, world);
  const planned = planJob(shop, mantel, legs, boards);
  return planned.ok ? { shop, ...planned.value } : null;
}

/** Whether the folder has the file, readable or not. */
export async function isThere(folder: string, role: keyof typeof jobFileNames): Promise<boolean> {
  const name = jobFileNames[role];
  const text = await readTextFile(join(folder, name), name);
  return !text.ok || text.value !== null;
}

async function boardsInMind(folder: string, buying: boolean): Promise<Result<readonly Board[], Problem>> {
  const read = await readJob(folder, { parts: [], boardsNeeded: false });
  if (!read.ok) return read;
  const { boards, yard } = read.value;
  if (!buying) return success(boards);
  // Boards still to be bought without a list may be of any width: what is owned says nothing of them.
  return success(yard.length > 0 ? [...boards, ...yard] : []);
}
