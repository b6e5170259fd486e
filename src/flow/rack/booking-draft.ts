import type { LengthUnit } from '../../base/units/read-length.ts';
import { ownHeader, writeLine } from './dialect.ts';
import type { Deed, Entry, Occasion } from './entry.ts';
import type { Journal } from './read-journal.ts';
import { entryCells } from './write-entry.ts';

/** A booking before it is written: its deeds in order, each with its note. */
export interface BookingDraft {
  readonly occasion: Occasion;
  readonly deeds: readonly { readonly deed: Deed; readonly note: string }[];
}

/** A booking's number and the text that makes it. */
export interface BookingText {
  readonly booking: number;
  readonly text: string;
}

/**
 * What is to be appended to the journal, to be written in one go: whole lines in the journal's own dialect, numbered
 * on from its last. A missing line end is made good first, an empty journal gets its header.
 * @param unit lengths are written in it
 */
export function bookingText(journal: Journal, draft: BookingDraft, unit: LengthUnit): BookingText {
  const booking = journal.lastBooking + 1;
  const lines = draft.deeds.map(({ deed, note }, index) => {
    const number = journal.lastEntry + 1 + index;
    const entry: Entry = { number, booking, occasion: draft.occasion, deed, note, line: 0 };
    return writeLine(entryCells(entry, { line: index + 1, of: draft.deeds.length }, unit), journal.dialect);
  });
  const before = journal.begun ? (journal.open ? journal.dialect.lineEnd : '') : ownHeader;
  return { booking, text: before + lines.join('') };
}
