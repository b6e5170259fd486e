import { join, resolve } from 'node:path';
import type { Command } from 'commander';
import { drawnGrades } from '../../index.ts';
import { offersOf } from '../buy/offers.ts';
import { quoted } from '../wording.ts';
import { buyByEstimate } from './buy-estimate.ts';
import { buyAtYard } from './buy-yard.ts';
import type { BuyOptions } from './buying.ts';
import { limitOf } from './drive.ts';
import { exitCodes, exitWith } from './end.ts';
import { gradesOption, pricesOption } from './grade-options.ts';
import { numberOption } from './number-option.ts';
import { openStockedJob } from './open-stock.ts';
import { shownPath } from './shown-path.ts';
import { ifStale, withPartsOptions } from './stale-parts.ts';
import type { World } from './world.ts';

/** `mantelwright buy JOB`: how many board feet of which grade, or which boards of the yard. */
export function register(program: Command, world: World): void {
  withPartsOptions(program.command('buy'))
    .description('what to buy: board feet and grade, or with a yard.csv which of its boards to take')
    .argument('<job>', 'job folder')
    .option('--out <folder>', 'where the page and the table go (default: out in the job folder)')
    .option('--json', 'print the whole answer as one JSON object on stdout, and nothing else')
    .option('--take', 'write the chosen yard boards into boards.csv')
    .option('--runner-ups <n>', 'further choices at the yard to look for', numberOption(0, 'whole'), 3)
    .option('--estimate', 'estimate board feet and grade even where there is a yard.csv')
    .option('--grades <list>', `grades to estimate (default: ${drawnGrades.join(',')})`, gradesOption)
    .option('--prices <list>', 'money for a board foot of each grade, as FAS=9.80,1C=6.40', pricesOption)
    .option('--draws <n>', 'imaginary visits to the yard for each grade', numberOption(1, 'whole'), 200)
    .option('--nothing-owned', 'leave out what is owned and on the rack')
    .option('--seed <n>', 'another series of visits; another order of trying', numberOption(0, 'whole'), 1)
    .option('--effort <n>', 'work to spend on each choice at the yard', numberOption(0, 'any'), 1)
    .option('--seconds <n>', 'stop after so long with what is found by then', numberOption(0, 'any'))
    .option('--rack <file>', 'the rack of offcuts, where the job names none')
    .option('--no-rack', 'count no offcut of the rack')
    .action((given: string, options: BuyOptions) => buyCommand(given, options, world));
}

async function buyCommand(given: string, options: BuyOptions, world: World): Promise<void> {
  const limit = limitOf(options, world);
  const opened = await openStockedJob(given, options, world, {
    buying: true,
    ifStale: ifStale(options),
  });
  const { folder } = opened;
  const job = options.nothingOwned === true ? { ...opened.job, boards: [] } : opened.job;
  if (job.parts.every(({ quantity }) => quantity === 0)) {
    world.stderr.write(
      `mantelwright: ${shownPath(folder, world)} asks for no part, so nothing has to be bought\n`,
    );
    exitWith(exitCodes.badInput);
  }
  const out = options.out === undefined ? join(folder, 'out') : resolve(world.cwd, options.out);
  const buying = { folder, job, options, out, limit };
  const offers = offersOf(opened.yard, opened.asWritten.boards);
  if (opened.yard.length === 0 || options.estimate === true) {
    if (options.take === true) {
      world.stderr.write('mantelwright: --take needs a yard.csv to take boards from\n');
      exitWith(exitCodes.badInput);
    }
    return buyByEstimate(buying, [...opened.asWritten.boards, ...opened.yard], world);
  }
  if (offers.clashes.length > 0) {
    world.stderr.write(
      `mantelwright: yard.csv and boards.csv list different boards as ${offers.clashes.map(quoted).join(', ')}\n` +
        '  mend: give the yard board another name in yard.csv, and in defects.csv\n',
    );
    exitWith(exitCodes.badInput);
  }
  return buyAtYard(buying, offers, world);
}
