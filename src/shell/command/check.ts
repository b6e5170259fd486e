import type { Command } from 'commander';
import { describeFault, jobOfLayout, verify } from '../../index.ts';
import { exitCodes, exitWith } from './end.ts';
import { type RackOption, openStockedJob } from './open-stock.ts';
import { readLayout } from './read-layout.ts';
import { type PartsOptions, ifStale, withPartsOptions } from './stale-parts.ts';
import type { World } from './world.ts';

/** `mantelwright check JOB LAYOUT.json`: replays a layout against the job's files. */
export function register(program: Command, world: World): void {
  withPartsOptions(program.command('check'), false)
    .description(
      'replay a layout against the job, by code apart from the solver, and list what is wrong with it',
    )
    .argument('<job>', 'job folder')
    .argument('<layout>', 'a layout.json, as layout writes it')
    .option(
      '--rack <file>',
      'the rack of offcuts, where the job names none (default: rack.csv beside the job folder)',
    )
    .action(async (given: string, file: string, options: RackOption & PartsOptions) => {
      const { asWritten, open } = await openStockedJob(given, options, world, {
        ifStale: ifStale(options),
      });
      const { shown, layout } = await readLayout(file, 'lay the job out first: mantelwright layout', world);
      const job = open === null ? asWritten : jobOfLayout(asWritten, open.rack, layout);
      const faults = verify(job, layout);
      const style = { units: job.shop.units, printFraction: job.shop.printFraction };
      if (faults.length > 0) {
        world.stderr.write(faults.map((fault) => `${shown}: ${describeFault(fault, style)}\n`).join(''));
        exitWith(exitCodes.badInput);
      }
      const { boards, short } = layout;
      const pieces = boards.reduce((sum, board) => sum + board.pieces.length, 0);
      world.stdout.write(
        `${shown}: ${boards.length} boards, ${pieces} pieces: every cut replayed, no fault\n`,
      );
      const left = short.reduce((sum, { copies }) => sum + copies, 0);
      if (left > 0) world.stdout.write(`${left} pieces are not laid out; the layout says so\n`);
    });
}
