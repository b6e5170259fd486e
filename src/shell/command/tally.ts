import { join, resolve } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Command } from 'commander';
import { type Job, type TallyRow, tally, tallyCsv, tallyJson, tallyPage, tallyText } from '../../index.ts';
import { readJob } from '../read/job.ts';
import { exitCodes, exitWith, orEnd } from './end.ts';
import { progressLine } from './progress-line.ts';
import { shownPath } from './shown-path.ts';
import { told } from './told.ts';
import type { World } from './world.ts';
import { writeTogether } from './write-together.ts';

interface TallyOptions {
  readonly out?: string;
  readonly json?: true;
}

/** `mantelwright tally JOB`: board feet, surface measure, and the grade that each board's marked defects meet. */
export function register(program: Command, world: World): void {
  program
    .command('tally')
    .description('measure and grade every board of boards.csv and yard.csv by its marked defects')
    .argument('<job>', 'job folder')
    .option('--out <folder>', 'where the page and the table go (default: out in the job folder)')
    .option('--json', 'print the whole answer as one JSON object on stdout, and nothing else')
    .action((given: string, options: TallyOptions) => tallyCommand(given, options, world));
}

async function tallyCommand(given: string, options: TallyOptions, world: World): Promise<void> {
  const folder = resolve(world.cwd, given);
  const job = orEnd(await readJob(folder, { parts: [], boardsNeeded: false }), world);
  if (job.boards.length + job.yard.length === 0) {
    world.stderr.write(
      `mantelwright: ${shownPath(folder, world)} has no board to tally\n  mend: list boards in boards.csv, or in yard.csv\n`,
    );
    exitWith(exitCodes.badInput);
  }
  const rows = await driveTally(job, job.yard, world);
  const out = options.out === undefined ? join(folder, 'out') : resolve(world.cwd, options.out);
  const files = [
    { name: 'tally.html', text: tallyPage(job.name, rows, job.shop) },
    { name: 'tally.csv', text: tallyCsv(rows, job.shop) },
  ];
  const written = await writeTogether(out, files, world);
  if (options.json === true) {
    if (options.out === undefined) told(written, world);
    else orEnd(written, world);
    world.stdout.write(tallyJson(job.name, rows));
    return;
  }
  orEnd(written, world);
  world.stdout.write(`${tallyText(rows, job.shop)}\npage: ${shownPath(join(out, 'tally.html'), world)}\n`);
}

/** A board with many defects takes a moment: say which one is looked at. */
async function driveTally(job: Job, yard: Job['boards'], world: World): Promise<TallyRow[]> {
  const line = progressLine(world);
  const rows: TallyRow[] = [];
  const count = job.boards.length + yard.length;
  for (const row of tally(job, yard)) {
    rows.push(row);
    line.show({ doing: `grading board ${rows.length} of ${count}`, value: null, bound: null });
    await setImmediate();
  }
  line.clear();
  return rows;
}
