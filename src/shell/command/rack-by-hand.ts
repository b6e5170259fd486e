import type { Command } from 'commander';
import {
  type BookingDraft,
  type BookingProblem,
  type Rack,
  type Result,
  discardPieces,
  takePieces,
  undoLast,
} from '../../index.ts';
import { quoted } from '../wording.ts';
import { book, plainly, sayBooked, timeNow } from './rack-book.ts';
import { openRack } from './rack-open.ts';
import type { World } from './world.ts';

/** Options that every command about pieces of the rack has. */
interface PieceOptions {
  readonly job?: string;
  readonly rack?: string;
  readonly note?: string;
}

type Deed = (
  rack: Rack,
  names: readonly string[],
  hand: { time: string; job: string; note: string },
) => Result<BookingDraft, BookingProblem>;

/** `rack take`, `rack discard` and `rack undo`: bookings by hand. */
export function register(rackCommand: Command, world: World): void {
  pieceCommand(
    rackCommand,
    'take',
    'take pieces off the rack for something that is no layout',
    takePieces,
    world,
  );
  pieceCommand(rackCommand, 'discard', 'throw pieces out: they are nowhere any more', discardPieces, world);
  rackCommand
    .command('undo')
    .description('reverse the last booking; once more reverses the one before it')
    .argument('[job]', 'a job folder whose rack is meant')
    .option('--rack <file>', 'the rack (default: rack.csv here)')
    .action(async (given: string | undefined, options: PieceOptions) => {
      const open = await openRack(given, options.rack, world);
      const hand = { time: timeNow(), job: '', note: '' };
      const { booking, draft } = await book(open, (rack) => plainly(undoLast(rack, hand)), world);
      const undone = draft.deeds.flatMap(({ deed }) => (deed.action === 'undo' ? [deed.undoes] : []));
      const text = `${open.shown}: booking ${booking} reverses booking ${undone.join()}\n`;
      sayBooked(text, booking, open, world);
    });
}

function pieceCommand(
  rackCommand: Command,
  name: string,
  description: string,
  deed: Deed,
  world: World,
): void {
  rackCommand
    .command(name)
    .description(description)
    .argument('<pieces...>', 'names as written on the wood')
    .option('--job <folder>', 'a job folder whose rack is meant')
    .option('--rack <file>', 'the rack (default: rack.csv here)')
    .option('--note <text>', 'why, for the journal')
    .action(async (names: string[], options: PieceOptions) => {
      const open = await openRack(options.job, options.rack, world);
      const hand = { time: timeNow(), job: open.key, note: options.note ?? '' };
      const { booking, draft } = await book(open, (rack) => plainly(deed(rack, names, hand)), world);
      const pieces = draft.deeds.flatMap(({ deed: one }) => ('name' in one ? [quoted(one.name)] : []));
      const text = `${open.shown}: booking ${booking}: ${name} ${pieces.join(', ')}\n`;
      sayBooked(text, booking, open, world);
    });
}
