import type { BookingDraft, BookingProblem, Rack, Result } from '../../index.ts';
import { appendBooking } from '../rack/append-booking.ts';
import { bookingProblemText } from '../rack/rack-words.ts';
import { exitCodes, exitWith } from './end.ts';
import { endRack, type OpenRack } from './rack-open.ts';
import { report } from './report.ts';
import { shownPath } from './shown-path.ts';
import type { World } from './world.ts';

/** A booking as a command makes it: the draft, and what the command wants to say of it afterwards. */
export interface Made<T> {
  readonly draft: BookingDraft;
  readonly result: T;
}

/** A booking that was made. */
export interface Booked<T> {
  readonly booking: number;
  readonly draft: BookingDraft;
  readonly result: T;
  /** The rack just before it. */
  readonly before: Rack;
}

/** The moment a booking is made, as the journal tells it. */
export function timeNow(): string {
  return `${new Date().toISOString().slice(0, 19)}Z`;
}

/**
 * Books on a rack, or ends the command with what is in the way; then nothing has been written.
 * @param make shown the rack as it is under the lock, which may be newer than the one the command has seen
 */
export async function book<T>(
  open: OpenRack,
  make: (rack: Rack) => Result<Made<T>, BookingProblem>,
  world: World,
): Promise<Booked<T>> {
  const done = await appendBooking<Made<T>, BookingProblem>(
    open.file,
    (rack) => {
      const made = make(rack);
      return made.ok ? { ok: true, value: { draft: made.value.draft, result: made.value } } : made;
    },
    { unit: open.style.units },
  );
  switch (done.kind) {
    case 'booked': {
      if (done.setAside !== null)
        world.stderr.write(`the torn lines are kept in ${shownPath(done.setAside, world)}\n`);
      return { booking: done.booking, ...done.value, before: done.before.rack };
    }
    case 'refused':
      return refuse(done.problems, world);
    default:
      return endRack(done, world);
  }
}

/** Says what was booked; should that fail, that the booking stands is said all the same. */
export function sayBooked(text: string, booking: number, { shown }: OpenRack, world: World): void {
  report(text, `${shown}: booking ${booking} was made; do not make it again`, world);
}

/** Ends the command with the reasons why nothing was booked. */
export function refuse(problems: readonly BookingProblem[], world: World): never {
  world.stderr.write(problems.map((problem) => `${bookingProblemText(problem)}\n`).join(''));
  return exitWith(exitCodes.badInput);
}

/** A draft by hand with nothing more to say of it. */
export function plainly(draft: Result<BookingDraft, BookingProblem>): Result<Made<null>, BookingProblem> {
  return draft.ok ? { ok: true, value: { draft: draft.value, result: null } } : draft;
}
