import { failure, success, type Result } from '../../base/result/result.ts';
import { ownDialect, ownHeader, type Dialect } from './dialect.ts';
import type { Entry } from './entry.ts';
import type { JournalNotice, NoJournal } from './problem.ts';
import { readEntry, wholeNumber } from './read-entry.ts';
import { splitJournal, type RawLine, type SplitJournal } from './split-journal.ts';

/** A journal as read: its entries in order, what was wrong with it, and where the next line goes. */
export interface Journal {
  readonly entries: readonly Entry[];
  readonly notices: readonly JournalNotice[];
  readonly dialect: Dialect;
  /** Physical lines that stay; what follows was torn off while being written. Infinity: nothing is torn. */
  readonly keepLines: number;
  /** The last line that stays has no line end yet. */
  readonly open: boolean;
  /** The file has a header; without one (an empty file) the next booking writes it. */
  readonly begun: boolean;
  /** Highest numbers in use, damaged lines counted. */
  readonly lastEntry: number;
  readonly lastBooking: number;
}

/** The journal of a rack that has none yet. */
export const emptyJournal: Journal = {
  entries: [],
  notices: [],
  dialect: ownDialect,
  keepLines: Infinity,
  open: false,
  begun: false,
  lastEntry: 0,
  lastBooking: 0,
};

/**
 * Reads a journal. Whatever is readable is read: a damaged line costs that line and is named by number. Only a booking
 * whose last line is missing at the end of the file is left out whole: it was being written when its writer died.
 * @param text the file, decoded
 * @returns problems only when the file has no header of a journal. O(text).
 */
export function readJournal(text: string): Result<Journal, NoJournal> {
  if (text.replace(/^\uFEFF/, '').trim() === '') return success(emptyJournal);
  const header = tornHeader(text);
  if (header !== null) return success(header);
  const split = splitJournal(text);
  if ('kind' in split) return failure([split]);
  const torn = tornFrom(split);
  const kept = torn < 0 ? split.lines : split.lines.slice(0, torn);
  const notices = [...split.notices];
  const entries: Entry[] = [];
  for (const raw of kept) {
    const { entry, faults } =
      raw.cells === null ? { entry: null, faults: ['a quote is left open'] } : readEntry(raw.cells, raw.line);
    if (faults.length > 0)
      notices.push({ kind: 'damaged line', line: raw.line, why: faults.join('; '), text: raw.text });
    if (entry !== null) entries.push(entry);
  }
  notices.push(...gaps(kept));
  const first = split.lines[torn];
  if (first !== undefined) notices.push(tornNotice(split, first));
  return success({
    entries: inOrder(entries),
    notices,
    dialect: split.dialect,
    keepLines: first === undefined ? Infinity : first.line - 1,
    open: first === undefined && split.open,
    begun: true,
    lastEntry: highest(kept, 'entry'),
    lastBooking: highest(kept, 'booking'),
  });
}

/** A file that holds nothing but the torn beginning of our own header: its writer died in the first booking. */
function tornHeader(text: string): Journal | null {
  if (text.length >= ownHeader.trimEnd().length || !ownHeader.startsWith(text)) return null;
  return { ...emptyJournal, keepLines: 0, notices: [{ kind: 'torn tail', line: 1, lines: 1, text }] };
}

/**
 * Index of the first line of the torn tail, or −1. Torn is a last line that was cut off within, and the last booking
 * when it lacks lines at its end: neither its closing line nor as many lines as it should have are there. A damaged
 * line counts as a line: damage is not a tear.
 */
function tornFrom({ lines, open }: SplitJournal): number {
  const whole = open && lines.at(-1)?.ended === false ? lines.slice(0, -1) : lines;
  const cut = whole.length < lines.length ? whole.length : -1;
  const lastNumbered = whole.findLastIndex((raw) => numberOf(raw, 'booking') !== null);
  const booking = numberOf(whole[lastNumbered], 'booking');
  if (booking === null) return cut;
  const its = whole.filter((raw) => numberOf(raw, 'booking') === booking);
  // The least of what its lines say: one number damaged upwards makes no tear.
  const of = its.reduce((least, raw) => Math.min(least, numberOf(raw, 'of') ?? Infinity), Infinity);
  const damagedAfter = whole.length - 1 - lastNumbered;
  const there = its.length + damagedAfter;
  if (of === Infinity || there >= of || its.some((raw) => numberOf(raw, 'line') === of)) return cut;
  let from = lastNumbered;
  for (let at = lastNumbered; at >= 0; at -= 1) {
    const number = numberOf(whole[at], 'booking');
    if (number === booking) from = at;
    else if (number !== null) break;
  }
  return from;
}

function numberOf(raw: RawLine | undefined, column: 'booking' | 'line' | 'of' | 'entry'): number | null {
  return wholeNumber(raw?.cells?.get(column));
}

function highest(lines: readonly RawLine[], column: 'entry' | 'booking'): number {
  return lines.reduce((most, raw) => Math.max(most, numberOf(raw, column) ?? 0), 0);
}

function tornNotice(split: SplitJournal, first: RawLine): JournalNotice {
  const torn = split.physicalLines.slice(first.line - 1);
  const lines = torn.at(-1) === '' ? torn.length - 1 : torn.length;
  return { kind: 'torn tail', line: first.line, lines, text: torn.join('\n') };
}

/** Bookings that once were whole and have lost lines since: somebody deleted a row. */
function gaps(lines: readonly RawLine[]): JournalNotice[] {
  const seen = new Map<number, { there: number; of: number }>();
  for (const raw of lines) {
    const booking = numberOf(raw, 'booking');
    const of = numberOf(raw, 'of');
    if (booking === null || of === null) continue;
    const count = seen.get(booking) ?? { there: 0, of };
    seen.set(booking, { there: count.there + 1, of: Math.max(of, count.of) });
  }
  return [...seen]
    .filter(([, { there, of }]) => there < of)
    .map(([booking, { there, of }]) => ({ kind: 'booking with gaps', booking, there, of }));
}

/** By entry number, so that a file sorted by length in a spreadsheet still tells its story; file order otherwise. */
function inOrder(entries: readonly Entry[]): readonly Entry[] {
  let before = 0;
  const keyed = entries.map((entry) => {
    before = entry.number ?? before;
    return { entry, key: before };
  });
  const sorted = keyed.every(({ key }, index) => index === 0 || key >= (keyed[index - 1]?.key ?? 0));
  return sorted ? entries : keyed.sort((a, b) => a.key - b.key).map(({ entry }) => entry);
}
