import { resolve } from 'node:path';
import { type Command, InvalidArgumentError } from 'commander';
import { type Held, type Rack, findPiece, labelsHtml, listPieces } from '../../index.ts';
import { writeAtomically } from '../write/atomically.ts';
import { exitCodes, exitWith, orEnd } from './end.ts';
import { refuse } from './rack-book.ts';
import { type FilterOptions, filterOf, withFilters } from './rack-list.ts';
import { openRack } from './rack-open.ts';
import { shownPath } from './shown-path.ts';
import type { World } from './world.ts';

interface LabelOptions extends FilterOptions {
  readonly rack?: string;
  readonly out: string;
  readonly only?: readonly string[];
  readonly last?: true;
}

/** `mantelwright rack labels`: a sheet of labels to print. */
export function register(rackCommand: Command, world: World): void {
  withFilters(
    rackCommand
      .command('labels')
      .description('a sheet of labels to print: name, size, wood, a small drawing with the flaws'),
  )
    .option('--only <names...>', 'of these pieces')
    .option('--last', 'of the pieces that the last booking of a layout put on the rack')
    .option('--out <file>', 'where the sheet goes, a name that ends in .html', pageOption, 'rack-labels.html')
    .action(async (given: string | undefined, options: LabelOptions) => {
      const open = await openRack(given, options.rack, world);
      const named = options.only === undefined ? null : namedPieces(open.rack, options.only, world);
      const pieces = listPieces(open.rack, filterOf(options, open.style, world)).filter(
        (held) =>
          (named === null || named.has(held)) &&
          (options.last !== true || held.booking === lastPut(open.rack)),
      );
      if (pieces.length === 0) {
        world.stderr.write(`${open.shown}: no piece to label\n  mend: see "rack list", or ask for less\n`);
        exitWith(exitCodes.badInput);
      }
      const path = resolve(world.cwd, options.out);
      orEnd(await writeAtomically(path, labelsHtml(pieces, open.style)), world);
      world.stdout.write(
        `${shownPath(path, world)}: ${pieces.length === 1 ? '1 label' : `${pieces.length} labels`}\n`,
      );
    });
}

/** A page by its name, so that no slip of the hand puts labels in the place of boards.csv. */
function pageOption(text: string): string {
  if (/\.html?$/i.test(text)) return text;
  throw new InvalidArgumentError('Give a name that ends in .html.');
}

function namedPieces(rack: Rack, names: readonly string[], world: World): ReadonlySet<Held> {
  const found = names.map((name) => findPiece(rack, name));
  const problems = found.filter((one) => 'kind' in one);
  if (problems.length > 0) refuse(problems, world);
  return new Set(found.filter((one) => 'piece' in one));
}

/** The number of the last booking that put pieces which are still there. */
function lastPut(rack: Rack): number {
  return listPieces(rack, {}).reduce((last, { booking }) => Math.max(last, booking ?? 0), 0);
}
