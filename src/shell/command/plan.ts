import { join, resolve } from 'node:path';
import type { Command } from 'commander';
import {
  type PartRow,
  type Result,
  adopted,
  drawPlanView,
  drawSection,
  losesWork,
  planReport,
  replan,
  stretchWords,
} from '../../index.ts';
import type { Problem } from '../print-problem.ts';
import { jobFileNames } from '../read/job.ts';
import { type PartsFile, readParts } from '../read/parts.ts';
import { readTextFile } from '../read/text-file.ts';
import type { WriteProblem } from '../write/problem.ts';
import { writePartsCsv } from '../write/parts-csv.ts';
import { orEnd } from './end.ts';
import { replacePartsFile } from './follow-plan.ts';
import { type PlannedMantel, openPlan } from './planned-mantel.ts';
import { shownPath } from './shown-path.ts';
import { changesText, refuseOverwrite, refuseUnmarked } from './stale-parts.ts';
import type { World } from './world.ts';
import { type TextFile, writeTogether } from './write-together.ts';

interface PlanOptions {
  readonly out?: string;
  readonly overwrite?: true;
}

/** `mantelwright plan JOB`: from wall measurements to `parts.csv`, drawings and a report. */
export function register(program: Command, world: World): void {
  program
    .command('plan')
    .description(
      'turn wall measurements (mantel.csv, legs.csv) into parts.csv; draw the mantel and report on it',
    )
    .argument('<job>', 'job folder')
    .option('--out <folder>', 'where the drawings go (default: out in the job folder)')
    .option('--overwrite', 'replace sizes in parts.csv that were changed by hand, too')
    .action(async (given: string, options: PlanOptions) => {
      const folder = resolve(world.cwd, given);
      const planned = await openPlan(folder, world);
      const out = options.out === undefined ? join(folder, 'out') : resolve(world.cwd, options.out);
      orEnd(await writeTogether(out, mantelDrawings(planned), world), world);
      world.stdout.write(`${planReport(planned.plan, planned.shop)}${brokenRun(planned)}\n`);
      for (const { name } of mantelDrawings(planned))
        world.stdout.write(`${shownPath(join(out, name), world)}\n`);
      await takePlan(folder, planned, options, world);
    });
}

/**
 * Writes a plan into `parts.csv`, leaving what the person wrote there. Ends the command, the file as it was, where that would
 * replace a size that was changed by hand, or where the file does not say which rows are the plan's.
 */
async function takePlan(
  folder: string,
  planned: PlannedMantel,
  { overwrite }: PlanOptions,
  world: World,
): Promise<void> {
  const shown = shownPath(join(folder, jobFileNames.parts), world);
  const count = `${planned.parts.length} parts`;
  const file = orEnd(await partsFile(folder, planned, world), world);
  if (file === null) {
    orEnd(await writeParts(folder, planned, world), world);
    world.stdout.write(`${shown}: ${count}\n`);
    return;
  }
  const { rows, marksPlanned } = file;
  if (!marksPlanned && overwrite !== true) refuseUnmarked(shown, folder, world);
  const replanned = replan(marksPlanned ? rows : adopted(rows, planned.parts), planned.parts);
  if (losesWork(replanned) && overwrite !== true)
    refuseOverwrite(replanned, { shown, folder, shop: planned.shop }, world);
  const end = orEnd(await replacePartsFile(folder, rows, replanned, planned.shop, world), world);
  const changes = changesText(replanned, planned.shop);
  world.stdout.write(
    `${shown}: ${count}${end === 'the same' ? ', unchanged' : ', planned anew'}\n${changes}`,
  );
}

/** The rows of the `parts.csv` that is there; null where there is none. Pins are not looked up: they stay as they are. */
async function partsFile(
  folder: string,
  { shop }: PlannedMantel,
  world: World,
): Promise<Result<PartsFile | null, Problem>> {
  const path = join(folder, jobFileNames.parts);
  const shown = shownPath(path, world);
  const text = await readTextFile(path, shown);
  if (!text.ok) return text;
  if (text.value === null) return { ok: true, value: null };
  const { value, problems } = readParts(shown, text.value, shop, null);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value };
}

/** Writes `parts.csv` of a planned mantel into a job folder that has none. */
export async function writeParts(
  folder: string,
  planned: PlannedMantel,
  world: World,
): Promise<Result<void, WriteProblem>> {
  const rows = planned.parts.map((part): PartRow => ({ part, planned: part }));
  const text = writePartsCsv(rows, planned.shop);
  return writeTogether(folder, [{ name: jobFileNames.parts, text }], world);
}

/** The mantel seen from above and in section. */
export function mantelDrawings({ plan, shop }: PlannedMantel): [above: TextFile, section: TextFile] {
  return [
    { name: 'mantel-plan.svg', text: drawPlanView(plan, shop) },
    { name: 'mantel-section.svg', text: drawSection(plan, shop) },
  ];
}

/** Says so when the boards at hand have no room for the facing's run whole, and how a layout would break it. */
function brokenRun({ wrap }: PlannedMantel): string {
  if (wrap === null || wrap.length === 1) return '';
  return `\nNo board at hand has a clear face for the whole facing. The best that a layout can make of it on them:\n  ${stretchWords(wrap)}\n`;
}
