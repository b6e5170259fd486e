import { type Command, InvalidArgumentError } from 'commander';
import {
  type Correction,
  type LengthStyle,
  type Tick,
  type Turn,
  correctPiece,
  formatLengthWithUnit,
  readLength,
  runTogether,
  turns,
} from '../../index.ts';
import { quoted } from '../wording.ts';
import { exitCodes, exitWith } from './end.ts';
import { numberOption } from './number-option.ts';
import { book, plainly, sayBooked, timeNow } from './rack-book.ts';
import { openRack } from './rack-open.ts';
import type { World } from './world.ts';

interface FixOptions {
  readonly job?: string;
  readonly rack?: string;
  readonly note?: string;
  readonly length?: string;
  readonly width?: string;
  readonly thickness?: string;
  readonly turn?: Turn;
  readonly species?: string;
  readonly tone?: string;
  readonly lookA?: number;
  readonly lookB?: number;
}

/** `mantelwright rack fix PIECE`: what was measured after the fact. */
export function register(rackCommand: Command, world: World): void {
  rackCommand
    .command('fix')
    .description('set a piece right: measured sizes, how it lies, species, tone, looks')
    .argument('<piece>', 'its name as written on the wood')
    .option('--length <size>', 'measured from the butt end')
    .option('--width <size>', 'measured from the near edge')
    .option('--thickness <size>', 'as it is dressed')
    .option(
      '--turn <how>',
      `how it is to lie from now on: ${turns.slice(1).join(', ')} (over and end for end)`,
      turnOption,
    )
    .option('--species <name>', 'what wood it is')
    .option('--tone <word>', 'pieces of one word match in colour')
    .option('--look-a <0 to 10>', 'how much you like face A', lookOption)
    .option('--look-b <0 to 10>', 'how much you like face B', lookOption)
    .option('--note <text>', 'a note on the piece')
    .option('--job <folder>', 'a job folder whose rack and unit are meant')
    .option('--rack <file>', 'the rack (default: rack.csv here)')
    .action((name: string, options: FixOptions) => fix(name, options, world));
}

async function fix(name: string, options: FixOptions, world: World): Promise<void> {
  const open = await openRack(options.job, options.rack, world);
  const correction = correctionOf(options, open.style, world);
  const hand = { time: timeNow(), job: open.key, note: options.note ?? '' };
  const { booking, draft } = await book(
    open,
    (rack) => plainly(correctPiece(rack, name, correction, hand)),
    world,
  );
  for (const { deed } of draft.deeds) {
    if (deed.action !== 'correct') continue;
    const { length, width, dressedThickness, defects } = deed.piece;
    const size = [length, width, dressedThickness]
      .map((one) => formatLengthWithUnit(one, open.style))
      .join(' x ');
    const flaws = defects.length === 1 ? '1 marked flaw' : `${defects.length} marked flaws`;
    const text = `${open.shown}: booking ${booking}: ${quoted(deed.piece.name)} is ${size}, ${flaws}\n`;
    sayBooked(text, booking, open, world);
  }
}

function correctionOf(options: FixOptions, style: LengthStyle, world: World): Correction {
  const { turn, species, tone, lookA, lookB } = options;
  const sizes = (['length', 'width', 'thickness'] as const).flatMap((which) => {
    const text = options[which];
    return text === undefined ? [] : [[which, sizeOf(which, text, style, world)] as const];
  });
  return {
    ...Object.fromEntries(sizes),
    ...(turn === undefined ? {} : { turn }),
    ...(species === undefined ? {} : { species }),
    ...(tone === undefined ? {} : { tone }),
    ...(lookA === undefined ? {} : { lookA }),
    ...(lookB === undefined ? {} : { lookB }),
  };
}

/** A measured size of the command line, in the job's unit where it names none; rounded down: a board never grows. */
export function sizeOf(which: string, text: string, style: LengthStyle, world: World): Tick {
  const read = readLength(text, { unit: style.units, decimalComma: false, round: 'down' });
  const meant = runTogether(text);
  if (read.ok && read.value > 0 && meant === null) return read.value;
  world.stderr.write(
    `--${which}: ${quoted(text)} is no length\n  mend: write it like ${meant ?? '31 1/2'}, 31.5 or 800 mm\n`,
  );
  return exitWith(exitCodes.badInput);
}

function lookOption(text: string): number {
  const look = numberOption(0, 'any')(text);
  if (look <= 10) return look;
  throw new InvalidArgumentError('Give a number from 0 to 10.');
}

function turnOption(text: string): Turn {
  const turn = turns.find((known) => known === text.trim().toLowerCase());
  if (turn !== undefined && turn !== 'as cut') return turn;
  throw new InvalidArgumentError(`Say one of: ${turns.slice(1).join(', ')}.`);
}
