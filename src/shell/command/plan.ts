import { join, resolve } from 'node:path';
import type { Command } from 'commander';
import { type Result, drawPlanView, drawSection, planReport, stretchWords } from '../../index.ts';
import { jobFileNames } from '../read/job.ts';
import { readTextFile } from '../read/text-file.ts';
import type { WriteProblem } from '../write/problem.ts';
import { writePartsCsv } from '../write/parts-csv.ts';
import { exitCodes, exitWith, orEnd } from './end.ts';
import { type PlannedMantel, openPlan } from './open-job.ts';
import { shownPath } from './shown-path.ts';
import type { World } from './world.ts';
import { type TextFile, writeTogether } from './write-together.ts';

/** `mantelwright plan JOB`: from wall measurements to `parts.csv`, drawings and a report. */
export function register(program: Command, world: World): void {
  program
    .command('plan')
    .description(
      'turn wall measurements (mantel.csv, legs.csv) into parts.csv; draw the mantel and report on it',
    )
    .argument('<job>', 'job folder')
    .option('--out <folder>', 'where the drawings go (default: out in the job folder)')
    .option('--overwrite', 'replace a parts.csv that differs from the plan')
    .action(async (given: string, options: { out?: string; overwrite?: true }) => {
      const folder = resolve(world.cwd, given);
      const planned = await openPlan(folder, world);
      const out = options.out === undefined ? join(folder, 'out') : resolve(world.cwd, options.out);
      const kept = await partsToKeep(folder, planned, world);
      if (kept === 'different' && options.overwrite !== true) {
        const shown = shownPath(join(folder, jobFileNames.parts), world);
        world.stderr.write(
          `mantelwright: ${shown} is there and differs from the plan; nothing was written\n` +
            '  mend: keep it and run layout, or replace it with plan --overwrite\n',
        );
        exitWith(exitCodes.badInput);
      }
      orEnd(await writeTogether(out, mantelDrawings(planned), world), world);
      if (kept !== 'the same') orEnd(await writeParts(folder, planned, world), world);
      world.stdout.write(planReport(planned.plan, planned.shop) + brokenRun(planned));
      const parts = shownPath(join(folder, jobFileNames.parts), world);
      world.stdout.write(
        `\n${parts}: ${planned.parts.length} parts${kept === 'the same' ? ', unchanged' : ''}\n`,
      );
      for (const { name } of mantelDrawings(planned))
        world.stdout.write(`${shownPath(join(out, name), world)}\n`);
    });
}

/** Writes `parts.csv` of a planned mantel into its job folder. */
export async function writeParts(
  folder: string,
  planned: PlannedMantel,
  world: World,
): Promise<Result<void, WriteProblem>> {
  const text = writePartsCsv(planned.parts, planned.shop);
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

/** How the `parts.csv` that is there compares with the plan's. */
async function partsToKeep(
  folder: string,
  planned: PlannedMantel,
  world: World,
): Promise<'none' | 'the same' | 'different'> {
  const path = join(folder, jobFileNames.parts);
  const text = orEnd(await readTextFile(path, shownPath(path, world)), world);
  if (text === null) return 'none';
  return text === writePartsCsv(planned.parts, planned.shop) ? 'the same' : 'different';
}
