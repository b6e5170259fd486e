import { join, resolve } from 'node:path';
import type { Command } from 'commander';
import { tallyCsv, tallyJson, tallyPage, tallyText } from '../../index.ts';
import { readJob } from '../read/job.ts';
import { drive, limitOf } from './drive.ts';
import { exitCodes, exitWith, nothingYet, orEnd } from './end.ts';
import { numberOption } from './number-option.ts';
import { sayCautions } from './say-cautions.ts';
import { shownPath } from './shown-path.ts';
import { told } from './told.ts';
import type { World } from './world.ts';
import { writeTogether } from './write-together.ts';

interface TallyOptions {
  readonly out?: string;
  readonly json?: true;
  readonly seconds?: number;
}

/** `mantelwright tally JOB`: board feet, surface measure, and the grade that each board's marked defects meet. */
export function register(program: Command, world: World): void {
  program
    .command('tally')
    .description('measure and grade every board of boards.csv and yard.csv by its marked defects')
    .argument('<job>', 'job folder')
    .option('--out <folder>', 'where the page and the table go (default: out in the job folder)')
    .option('--json', 'print the whole answer as one JSON object on stdout, and nothing else')
    .option('--seconds <n>', 'stop after so long with the boards graded by then', numberOption(0, 'any'))
    .action((given: string, options: TallyOptions) => tallyCommand(given, options, world));
}

async function tallyCommand(given: string, options: TallyOptions, world: World): Promise<void> {
  const folder = resolve(world.cwd, given);
  const limit = limitOf(options, world);
  const job = orEnd(await readJob(folder, { parts: [], boardsNeeded: false }), world);
  sayCautions(job.cautions, world);
  if (job.boards.length + job.yard.length === 0) {
    world.stderr.write(
      `mantelwright: ${shownPath(folder, world)} has no board to tally\n  mend: list boards in boards.csv, or in yard.csv\n`,
    );
    exitWith(exitCodes.badInput);
  }
  const { value: rows, ended } = await drive({ kind: 'tally', job, yard: job.yard }, world, limit);
  if (rows === null) return nothingYet(ended, world);
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
  } else {
    orEnd(written, world);
    world.stdout.write(`${tallyText(rows, job.shop)}\npage: ${shownPath(join(out, 'tally.html'), world)}\n`);
  }
  const count = job.boards.length + job.yard.length;
  if (rows.length < count)
    world.stderr.write(`stopped early: ${rows.length} of ${count} boards are graded, the others left out\n`);
}
