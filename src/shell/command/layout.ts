import { join, resolve } from 'node:path';
import type { Command } from 'commander';
import {
  type Layout,
  type LayoutAnswer,
  type Result,
  describeFault,
  glueLines,
  hindranceWords,
  rackNote,
  shownWoodLines,
  unnamedWood,
  summaryText,
} from '../../index.ts';
import { jobFileNames } from '../read/job.ts';
import type { WriteProblem } from '../write/problem.ts';
import { quoted } from '../wording.ts';
import { type Driven, type Limit, drive, limitOf } from './drive.ts';
import { exitCodes, exitWith, nothingYet, orEnd } from './end.ts';
import { faceOfLayout, refuse } from './show-face.ts';
import { numberOption } from './number-option.ts';
import { type RackOption, type StockedOpening, forRack, openStockedJob } from './open-stock.ts';
import { writeParts } from './plan.ts';
import { layoutJson, resultFiles } from './result-files.ts';
import { shownPath } from './shown-path.ts';
import { lastDrawings, removeStale } from './stale-drawings.ts';
import { type PartsOptions, ifStale, withPartsOptions } from './stale-parts.ts';
import { told } from './told.ts';
import type { World } from './world.ts';
import { type TextFile, writeTogether } from './write-together.ts';

/** Options of `layout` as they come from the argument reader. */
interface LayoutOptions extends RackOption, PartsOptions {
  readonly face?: string;
  readonly out?: string;
  readonly json?: true;
  readonly seed: number;
  readonly effort: number;
  readonly seconds?: number;
}

/** `mantelwright layout JOB`: from parts and boards to a checked sheet of cuts. */
export function register(program: Command, world: World): void {
  withPartsOptions(program.command('layout'))
    .description(
      'lay the parts out on the boards: the sheet to print, drawings, tables (plans first without parts.csv)',
    )
    .argument('<job>', 'job folder')
    .option('--out <folder>', 'where the files go (default: out in the job folder)')
    .option('--json', 'print the whole answer as one JSON object on stdout, and nothing else')
    .option(
      '--seed <n>',
      'another order of trying, where there is more than one best plan',
      numberOption(0, 'whole'),
      1,
    )
    .option('--effort <n>', 'how much work to spend; 0 for a first plan', numberOption(0, 'any'), 1)
    .option('--seconds <n>', 'stop after so long with the best plan so far', numberOption(0, 'any'))
    .option(
      '--rack <file>',
      'the rack of offcuts, where the job names none (default: rack.csv beside the job folder)',
    )
    .option('--no-rack', 'use no offcut of the rack')
    .option('--face <board:face>', 'the face that is to show, such as C1:A (see the command faces)')
    .action((given: string, options: LayoutOptions) => layoutCommand(given, options, world));
}

/** A job laid out. */
type Laid = Extract<LayoutAnswer, { kind: 'laid' }>;

async function layoutCommand(given: string, options: LayoutOptions, world: World): Promise<void> {
  const limit = limitOf(options, world);
  const opened = await openStockedJob(given, options, world, { ifStale: ifStale(options) });
  const { folder, mantel, isPlanned } = opened;
  const say = options.json === true ? world.stderr : world.stdout;
  if (isPlanned && mantel !== null) {
    const parts = shownPath(join(folder, jobFileNames.parts), world);
    // By the way: a job folder that cannot be written to can still be laid out.
    if (told(await writeParts(folder, mantel, world), world))
      say.write(`${parts}: ${mantel.parts.length} parts, from the measurements\n`);
  }
  const { job, lines, layout, checked, bare, ended } = await laidOut(opened, options, limit, world);
  const laid = checked.job;
  const rack = rackNote(job, layout, bare);
  const faces = [...lines, ...shownWoodLines(laid, layout), ...glueLines(laid, layout)];
  const unnamed = unnamedWood(
    laid,
    layout.boards.map(({ board }) => board),
  );
  const notes = [
    ...(faces.length === 0 ? [] : [{ heading: 'What shows', lines: faces }]),
    ...(unnamed === null ? [] : [{ heading: 'Species', lines: [unnamed] }]),
    ...(rack === null ? [] : [rack]),
  ];
  const out = options.out === undefined ? join(folder, 'out') : resolve(world.cwd, options.out);
  const written = await writeResult(out, resultFiles(laid, layout, mantel, notes), world);
  if (options.json === true) {
    // The answer is on its way by stdout: files that nobody asked for by name may fail.
    if (options.out === undefined) told(written, world);
    else orEnd(written, world);
    world.stdout.write(layoutJson(layout));
  } else {
    orEnd(written, world);
    const said = notes.map((note) => `${note.lines.join('\n')}\n`).join('');
    world.stdout.write(
      `${summaryText(laid, layout)}\n${said}sheet: ${shownPath(join(out, 'sheet.html'), world)}\n`,
    );
  }
  const early = endedEarly(ended);
  if (early !== null) say.write(early);
  if (layout.short.length > 0) exitWith(exitCodes.short);
}

/** What was laid out, sound, and how that ended; or the end of the command. */
async function laidOut(
  { job, ...opened }: StockedOpening,
  options: LayoutOptions,
  limit: Limit,
  world: World,
): Promise<
  Pick<Laid, 'job' | 'lines' | 'checked' | 'bare'> & { layout: Layout; ended: Driven<unknown>['ended'] }
> {
  const { seed, effort } = options;
  const face = faceOfLayout(job, options.face, world);
  const rack = forRack({ job, ...opened });
  const { value, ended } = await drive({ kind: 'layout', job, rack, seed, effort, face }, world, limit);
  if (value === null) return nothingYet(ended, world);
  if (value.kind === 'cannot') {
    const part = face === null ? '' : (job.parts[face.focus.lead]?.name ?? '');
    return refuse(
      `${quoted(part)} cannot show ${options.face ?? ''}: ${hindranceWords(value.why, job.shop)}`,
      'see what each face can do: mantelwright faces',
      world,
    );
  }
  return { ...value, layout: soundLayout(value, world), ended };
}

/** The layout, if the independent check found nothing against it. A layout with a fault is never shown. */
function soundLayout({ job, checked: { layout, faults } }: Laid, world: World): Layout {
  if (faults.length === 0) return layout;
  const style = { units: job.shop.units, printFraction: job.shop.printFraction };
  world.stderr.write(
    'mantelwright: the layout failed its own check and is not shown; please report it with the job folder\n' +
      faults
        .slice(0, 10)
        .map((fault) => `  ${describeFault(fault, style)}\n`)
        .join(''),
  );
  return exitWith(exitCodes.ownFault);
}

async function writeResult(
  out: string,
  files: readonly TextFile[],
  world: World,
): Promise<Result<void, WriteProblem>> {
  const last = await lastDrawings(out);
  const written = await writeTogether(out, files, world);
  if (written.ok) await removeStale(out, last, files);
  return written;
}

function endedEarly(ended: Driven<unknown>['ended']): string | null {
  switch (ended) {
    case 'done':
      return null;
    case 'interrupted':
      return 'stopped by Ctrl-C: this is the best plan found by then\n';
    case 'out of time':
      return 'stopped at the time limit: this is the best plan found by then\n';
  }
}
