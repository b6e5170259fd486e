import { join } from 'node:path';
import {
  type Part,
  type PartRow,
  type Replanned,
  type Result,
  type Shop,
  adopted,
  replan,
  success,
} from '../../index.ts';
import type { Problem } from '../print-problem.ts';
import { jobFileNames } from '../read/job.ts';
import type { JobAndYard } from '../read/job-texts.ts';
import { readTextFile } from '../read/text-file.ts';
import { replacedPartsCsv } from '../write/parts-csv.ts';
import { orEnd } from './end.ts';
import { type PlannedMantel, isThere, openPlan, planIfAny } from './planned-mantel.ts';
import { shownPath } from './shown-path.ts';
import { changesText, madeOtherwiseText, refuseStale, refuseUnmarked } from './stale-parts.ts';
import type { World } from './world.ts';
import { writeTogether } from './write-together.ts';

/**
 * What to do where planned parts no longer follow from the measurements: stop; take the new plan into `parts.csv`; or work
 * with the parts as they stand.
 */
export type IfStale = 'stop' | 'replan' | 'keep';

/** Parts to work on, and the mantel that was measured, if there is one. */
export interface FollowedParts {
  readonly parts: readonly Part[];
  readonly mantel: PlannedMantel | null;
}

/**
 * Plans again what a plan wrote into `parts.csv`, and compares. Ends the command where a planned row would change, and nobody
 * has said what to do then. How a part may be made follows from the boards at hand, and is taken from the plan at once.
 * @param buying as of `Opening`
 */
export async function followPlan(
  folder: string,
  read: JobAndYard,
  { ifStale, buying }: { readonly ifStale: IfStale; readonly buying: boolean },
  world: World,
): Promise<FollowedParts> {
  const { partRows, marksPlanned } = read;
  const isPlanned = partRows.some(({ planned }) => planned !== null);
  const isMeasured = (await isThere(folder, 'mantel')) && (await isThere(folder, 'legs'));
  const isUnmarked = !marksPlanned && isMeasured;
  if (ifStale === 'keep' || !(isPlanned || isUnmarked))
    return { parts: read.parts, mantel: await planIfAny(folder, read.boards, world) };
  const shown = shownPath(join(folder, jobFileNames.parts), world);
  if (isUnmarked && ifStale === 'stop') return refuseUnmarked(shown, folder, world);
  const mantel = await openPlan(folder, world, buying);
  const replanned = replan(isUnmarked ? adopted(partRows, mantel.parts) : partRows, mantel.parts);
  if (replanned.changes.length > 0 && ifStale === 'stop')
    return refuseStale(replanned, { shown, folder, shop: read.shop }, world);
  if (ifStale === 'replan') {
    const written = await replacePartsFile(folder, partRows, replanned, read.shop, world);
    if (orEnd(written, world) === 'replaced')
      world.stderr.write(`${shown}: the new plan is taken\n${changesText(replanned, read.shop)}`);
  } else if (!buying) world.stderr.write(madeOtherwiseText(replanned, shown));
  return { parts: replanned.rows.map(({ part }) => part), mantel };
}

/**
 * Writes rows that follow a plan into the `parts.csv` they were read from.
 * @param before the rows as they were read
 */
export async function replacePartsFile(
  folder: string,
  before: readonly PartRow[],
  { rows }: Replanned,
  shop: Shop,
  world: World,
): Promise<Result<'replaced' | 'the same', Problem>> {
  const path = join(folder, jobFileNames.parts);
  const shown = shownPath(path, world);
  const text = await readTextFile(path, shown);
  if (!text.ok) return text;
  const replaced = replacedPartsCsv(shown, text.value ?? '', before, rows, shop);
  if (!replaced.ok) return replaced;
  if (replaced.value === text.value) return success('the same');
  const written = await writeTogether(folder, [{ name: jobFileNames.parts, text: replaced.value }], world);
  return written.ok ? success('replaced') : written;
}
