import type { Command } from 'commander';
import {
  listPieces,
  parseThickness,
  rackTable,
  rackTotals,
  type PieceFilter,
  type LengthStyle,
} from '../../index.ts';
import { rackJson } from '../rack/rack-json.ts';
import { sizeOf } from './rack-fix.ts';
import { openRack } from './rack-open.ts';
import type { World } from './world.ts';

/** What of the rack is asked for. */
export interface FilterOptions {
  readonly thickness?: string;
  readonly species?: string;
  readonly long?: string;
  readonly wide?: string;
}

interface ListOptions extends FilterOptions {
  readonly rack?: string;
  readonly json?: true;
}

/** `mantelwright rack list`: what is on the rack. */
export function register(rackCommand: Command, world: World): void {
  withFilters(rackCommand.command('list').description('what is on the rack, longest first'))
    .option('--json', 'print the pieces as one JSON object on stdout, and nothing else')
    .action(async (given: string | undefined, options: ListOptions) => {
      const open = await openRack(given, options.rack, world);
      const pieces = listPieces(open.rack, filterOf(options, open.style, world));
      if (options.json === true) world.stdout.write(rackJson(pieces));
      else world.stdout.write(`${rackTable(pieces, open.style)}${open.shown}: ${rackTotals(pieces)}\n`);
    });
}

/** The job argument and the filters that `rack list` and `rack labels` share. */
export function withFilters(command: Command): Command {
  return command
    .argument('[job]', 'a job folder whose rack and unit are meant')
    .option('--rack <file>', 'the rack (default: rack.csv here)')
    .option(
      '--thickness <size>',
      'quarters as the yard names them (4/4), or at least so thick dressed (3/4 in)',
    )
    .option('--species <name>', 'of this species')
    .option('--long <length>', 'at least so long')
    .option('--wide <width>', 'at least so wide');
}

/** What the options ask for; ends the command where a size cannot be read. */
export function filterOf(options: FilterOptions, style: LengthStyle, world: World): PieceFilter {
  const { thickness, species, long, wide } = options;
  return {
    ...(thickness === undefined ? {} : thicknessFilter(thickness, style, world)),
    ...(species === undefined ? {} : { species }),
    ...(long === undefined ? {} : { long: sizeOf('long', long, style, world) }),
    ...(wide === undefined ? {} : { wide: sizeOf('wide', wide, style, world) }),
  };
}

function thicknessFilter(text: string, style: LengthStyle, world: World): PieceFilter {
  const quarters = /^\s*(\d{1,2})\s*\/\s*4\s*$/.exec(text);
  const isQuarters = quarters !== null && Number(quarters[1]) >= 4 && parseThickness(text, 'rough') !== null;
  return isQuarters ? { stock: text.replace(/\s/g, '') } : { thick: sizeOf('thickness', text, style, world) };
}
