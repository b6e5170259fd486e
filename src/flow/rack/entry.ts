import type { Tick } from '../../base/units/tick.ts';
import type { RackPiece } from './piece.ts';

/** So many equal pieces that a job cut from a board: the history of what was needed. */
export interface Made {
  readonly count: number;
  readonly length: Tick;
  readonly width: Tick;
  readonly thickness: Tick;
}

/** A keepable offcut goes onto the rack. */
export interface Put {
  readonly action: 'put';
  readonly piece: RackPiece;
}

/**
 * A piece of the rack, or one copy of a board of the job, is used up by a job. `piece` describes it for the reader of
 * the journal (and tells how large a job's board was); null when a damaged line no longer says.
 */
export interface Take {
  readonly action: 'take';
  readonly from: 'rack' | 'job';
  readonly name: string;
  readonly piece: RackPiece | null;
  readonly made: readonly Made[];
}

/** The piece of that name is really as now described: measured again, turned, or otherwise set right. */
export interface Correct {
  readonly action: 'correct';
  readonly piece: RackPiece;
}

/** Thrown out, burnt, given away: no longer on the rack, in no job. */
export interface Discard {
  readonly action: 'discard';
  readonly name: string;
  readonly piece: RackPiece | null;
}

/** A whole booking is reversed: from here on it counts as never made. */
export interface Undo {
  readonly action: 'undo';
  readonly undoes: number;
}

export type Deed = Put | Take | Correct | Discard | Undo;

export const actions = [
  'put',
  'take',
  'correct',
  'discard',
  'undo',
] as const satisfies readonly Deed['action'][];

/** What every line of one booking says alike. */
export interface Occasion {
  /** When, as text (ISO 8601 when written by us); for the reader only, the order of entries is what counts. */
  readonly time: string;
  /** The job's folder as seen from the rack's folder, forward slashes; empty when no job has part in it. */
  readonly job: string;
  /** Fingerprint of the layout that was booked; empty for bookings by hand. */
  readonly layout: string;
}

/** One line of the journal. */
export interface Entry {
  /** Runs through the whole journal from 1; null on a line added by hand. */
  readonly number: number | null;
  /** Entries of one booking stand or fall together; null on a line added by hand: a booking of its own. */
  readonly booking: number | null;
  readonly occasion: Occasion;
  readonly deed: Deed;
  /** Of the piece for put and correct, else why it was done. */
  readonly note: string;
  /** Physical line in the file, from 1; 0 before it is written. */
  readonly line: number;
}
