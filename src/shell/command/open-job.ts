import { resolve } from 'node:path';
import type { Board, Job, Part } from '../../index.ts';
import { readJob } from '../read/job.ts';
import { orEnd } from './end.ts';
import { type IfStale, followPlan } from './follow-plan.ts';
import { type PlannedMantel, isThere, openPlan } from './planned-mantel.ts';
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

/** How a command opens a job. */
export interface Opening {
  readonly ifStale: IfStale;
  /** Names that a part may be pinned to beside the job's own boards, such as offcuts of the rack. */
  readonly otherBoards?: readonly string[];
  /**
   * Boards are still to be bought: there may be no `boards.csv`, and the mantel is planned with the yard's boards in mind, too;
   * where no yard is known, with none.
   */
  readonly buying?: boolean;
}

/**
 * Reads a job folder. Without a `parts.csv` its parts are planned from `mantel.csv` and `legs.csv`; with one they must follow
 * from the measurements as far as a plan wrote them (`followPlan`). Ends the command, with all problems on stderr, when
 * anything is wrong.
 */
export async function openJob(given: string, world: World, opening: Opening): Promise<OpenedJob> {
  const { ifStale, otherBoards = [], buying = false } = opening;
  const folder = resolve(world.cwd, given);
  const needs = { otherBoards, boardsNeeded: !buying };
  if (!(await isThere(folder, 'parts')) && (await isThere(folder, 'mantel'))) {
    const mantel = await openPlan(folder, world, buying);
    const job = orEnd(await readJob(folder, { ...needs, parts: mantel.parts }), world);
    sayCautions(job.cautions, world);
    return { folder, job, yard: job.yard, mantel, isPlanned: true };
  }
  const read = orEnd(await readJob(folder, needs), world);
  sayCautions(read.cautions, world);
  const { parts, mantel } = await followPlan(folder, read, { ifStale, buying }, world);
  return {
    folder,
    job: { ...read, parts },
    yard: read.yard,
    mantel: mantel !== null && makes(parts, mantel) ? mantel : null,
    isPlanned: false,
  };
}

/** Whether the parts are the planned ones in every size, so that the mantel's drawings show what will be built. */
function makes(parts: readonly Part[], mantel: PlannedMantel): boolean {
  const byName = new Map(parts.map((part) => [part.name, part]));
  return mantel.parts.every((planned) => {
    const part = byName.get(planned.name);
    return (
      part?.length === planned.length && part.width === planned.width && part.thickness === planned.thickness
    );
  });
}
