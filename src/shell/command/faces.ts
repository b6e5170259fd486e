import { join, resolve } from 'node:path';
import type { Command } from 'commander';
import { type FaceTable, facesCsv, facesJson, facesPage, facesText } from '../../index.ts';
import { drive, limitOf } from './drive.ts';
import { exitCodes, exitWith, nothingYet, orEnd } from './end.ts';
import { numberOption } from './number-option.ts';
import { type RackOption, forRack, openStockedJob } from './open-stock.ts';
import { focusOrEnd } from './show-face.ts';
import { shownPath } from './shown-path.ts';
import { type PartsOptions, ifStale, withPartsOptions } from './stale-parts.ts';
import { told } from './told.ts';
import type { World } from './world.ts';
import { writeTogether } from './write-together.ts';

interface FacesOptions extends RackOption, PartsOptions {
  readonly part?: string;
  readonly out?: string;
  readonly json?: true;
  readonly seed: number;
  readonly effort: number;
  readonly seconds?: number;
}

/** Effort of each of the many layouts when the maker does not say. */
const usualEffort = 0.1;

/** `mantelwright faces JOB`: which board, and which face of it, becomes the front; what each choice costs. */
export function register(program: Command, world: World): void {
  withPartsOptions(program.command('faces'))
    .description(
      'every board and face that could become the front: how it looks, what it costs, what it rules out',
    )
    .argument('<job>', 'job folder')
    .option('--part <name>', 'choose the face of this part, or of its run (default: the most visible)')
    .option('--out <folder>', 'where the page and the table go (default: out in the job folder)')
    .option('--json', 'print the whole answer as one JSON object on stdout, and nothing else')
    .option('--seed <n>', 'another order of trying', numberOption(0, 'whole'), 1)
    .option('--effort <n>', 'how much work to spend on each choice', numberOption(0, 'any'), usualEffort)
    .option('--seconds <n>', 'stop after so long with the faces looked at by then', numberOption(0, 'any'))
    .option(
      '--rack <file>',
      'the rack of offcuts, where the job names none (default: rack.csv beside the job folder)',
    )
    .option('--no-rack', 'use no offcut of the rack')
    .action((given: string, options: FacesOptions) => facesCommand(given, options, world));
}

async function facesCommand(given: string, options: FacesOptions, world: World): Promise<void> {
  const limit = limitOf(options, world);
  const opened = await openStockedJob(given, options, world, { ifStale: ifStale(options) });
  const { folder, job } = opened;
  const focus = focusOrEnd(job, options.part ?? null, world);
  const { seed, effort } = options;
  const rack = forRack(opened);
  const { value: table, ended } = await drive(
    { kind: 'faces', job, focus, rack, seed, effort },
    world,
    limit,
  );
  if (table === null) return nothingYet(ended, world);
  const out = options.out === undefined ? join(folder, 'out') : resolve(world.cwd, options.out);
  const files = [
    { name: 'faces.html', text: facesPage(table) },
    { name: 'faces.csv', text: facesCsv(table) },
  ];
  const written = await writeTogether(out, files, world);
  if (options.json === true) {
    if (options.out === undefined) told(written, world);
    else orEnd(written, world);
    world.stdout.write(facesJson(table));
  } else {
    orEnd(written, world);
    world.stdout.write(`${facesText(table)}\n\npage: ${shownPath(join(out, 'faces.html'), world)}\n`);
  }
  if (ended !== 'done') world.stderr.write('stopped early: not every face was looked at, or not for long\n');
  if (!canShow(table)) exitWith(exitCodes.short);
}

function canShow({ choices }: FaceTable): boolean {
  return choices.some(({ kind }) => kind === 'possible');
}
