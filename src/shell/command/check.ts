import { resolve } from 'node:path';
import type { Command } from 'commander';
import { describeFault, describeShapeProblem, parseLayout, verify } from '../../index.ts';
import { readTextFile } from '../read/text-file.ts';
import { exitCodes, exitWith, orEnd } from './end.ts';
import { jsonOf } from './json-of.ts';
import { openJob } from './open-job.ts';
import { shownPath } from './shown-path.ts';
import type { World } from './world.ts';

/** `mantelwright check JOB LAYOUT.json`: replays a layout against the job's files. */
export function register(program: Command, world: World): void {
  program
    .command('check')
    .description(
      'replay a layout against the job, by code apart from the solver, and list what is wrong with it',
    )
    .argument('<job>', 'job folder')
    .argument('<layout>', 'a layout.json, as layout writes it')
    .action(async (given: string, file: string) => {
      const { job } = await openJob(given, world);
      const path = resolve(world.cwd, file);
      const shown = shownPath(path, world);
      const refuse = (lines: readonly string[]): never => {
        world.stderr.write(lines.map((line) => `${shown}: ${line}\n`).join(''));
        return exitWith(exitCodes.badInput);
      };
      const text = orEnd(await readTextFile(path, shown), world);
      if (text === null) return refuse(['no such file']);
      const json = jsonOf(text);
      if (json === undefined) return refuse(['this is not JSON']);
      const layout = parseLayout(json);
      if (!layout.ok) return refuse(layout.problems.map(describeShapeProblem));
      const faults = verify(job, layout.value);
      const style = { units: job.shop.units, printFraction: job.shop.printFraction };
      if (faults.length > 0) return refuse(faults.map((fault) => describeFault(fault, style)));
      const { boards, short } = layout.value;
      const pieces = boards.reduce((sum, board) => sum + board.pieces.length, 0);
      world.stdout.write(
        `${shown}: ${boards.length} boards, ${pieces} pieces: every cut replayed, no fault\n`,
      );
      const left = short.reduce((sum, { copies }) => sum + copies, 0);
      if (left > 0) world.stdout.write(`${left} pieces are not laid out; the layout says so\n`);
    });
}
