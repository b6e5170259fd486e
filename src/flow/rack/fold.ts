import { unreachable } from '../../base/result/unreachable.ts';
import type { Correct, Discard, Entry, Made, Put, Take } from './entry.ts';
import type { RackPiece } from './piece.ts';
import type { JournalNotice, Misfit } from './problem.ts';

/** Where a piece is: on the rack, used up in a job, or gone. */
export type Whereabouts =
  | { readonly kind: 'rack' }
  | { readonly kind: 'taken'; readonly job: string; readonly booking: number | null }
  | { readonly kind: 'discarded'; readonly booking: number | null };

/** A piece that was put on the rack, as last described, and where it is now. */
export interface Held {
  readonly piece: RackPiece;
  readonly note: string;
  /** The job whose boards it comes from. */
  readonly job: string;
  readonly time: string;
  readonly where: Whereabouts;
  /** Booking that put it there. */
  readonly booking: number | null;
}

/** One copy of a job's board that was used up. */
export interface UsedBoard {
  readonly job: string;
  readonly board: string;
  readonly piece: RackPiece | null;
  readonly booking: number | null;
}

/** A booking that stands. */
export interface Booking {
  readonly number: number;
  readonly time: string;
  readonly job: string;
  readonly layout: string;
}

/** What the journal says as a whole. */
export interface Rack {
  /** Every piece that was ever put (and not undone), by name, in the order it was put. */
  readonly pieces: ReadonlyMap<string, Held>;
  readonly used: readonly UsedBoard[];
  /** Bookings that stand, oldest first; bookings by hand are not among them. */
  readonly bookings: readonly Booking[];
  /** What jobs have cut, oldest first. */
  readonly made: readonly Made[];
  /** Entries that do not fit what went before; they were passed over, all others stand. */
  readonly notices: readonly JournalNotice[];
}

/** A rack under construction: the one place where it is mutable. */
interface Draft {
  readonly pieces: Map<string, Held>;
  readonly used: UsedBoard[];
  readonly bookings: Map<number, Booking>;
  readonly made: Made[];
  readonly notices: JournalNotice[];
}

/**
 * Folds a journal into the rack's state. A booking that was undone counts as never made. An entry that does not fit
 * (a piece taken twice, an unknown piece) is passed over and named: the first one in the journal stands.
 * @param entries in the journal's order
 * @returns O(entries); never fails
 */
export function foldJournal(entries: readonly Entry[]): Rack {
  const notices: JournalNotice[] = [];
  const undone = undoneBookings(entries, notices);
  const draft: Draft = { pieces: new Map(), used: [], bookings: new Map(), made: [], notices };
  const said = new Set<string>();
  for (const entry of entries) {
    if (entry.deed.action === 'undo' || (entry.booking !== null && undone.has(entry.booking))) continue;
    const misfit = saidBefore(entry, said) ? 'said twice' : apply(entry, draft);
    if (misfit !== null) notices.push(outOfPlace(entry, misfit));
    else if (entry.booking !== null && !draft.bookings.has(entry.booking))
      draft.bookings.set(entry.booking, { number: entry.booking, ...entry.occasion });
  }
  return { ...draft, bookings: [...draft.bookings.values()] };
}

/** Which bookings were undone, by undo entries that name one made before them and not undone yet. */
function undoneBookings(entries: readonly Entry[], notices: JournalNotice[]): ReadonlySet<number> {
  const made = new Set<number>();
  const undone = new Set<number>();
  for (const entry of entries) {
    if (entry.deed.action !== 'undo') {
      if (entry.booking !== null) made.add(entry.booking);
      continue;
    }
    const { undoes } = entry.deed;
    if (!made.has(undoes)) notices.push(outOfPlace(entry, 'no such booking'));
    else if (undone.has(undoes)) notices.push(outOfPlace(entry, 'undone before'));
    else undone.add(undoes);
  }
  return undone;
}

/** A row that was copied by hand: same entry number, same booking. */
function saidBefore(entry: Entry, said: Set<string>): boolean {
  if (entry.number === null) return false;
  const key = `${entry.number} ${entry.booking ?? ''}`;
  if (said.has(key)) return true;
  said.add(key);
  return false;
}

function outOfPlace(entry: Entry, why: Misfit): JournalNotice {
  const { deed, line } = entry;
  const name =
    deed.action === 'undo'
      ? String(deed.undoes)
      : deed.action === 'put' || deed.action === 'correct'
        ? deed.piece.name
        : deed.name;
  return { kind: 'entry out of place', line, name, why };
}

function apply(entry: Entry, draft: Draft): Misfit | null {
  const { deed } = entry;
  switch (deed.action) {
    case 'put':
      return put(entry, deed, draft);
    case 'take':
      return take(entry, deed, draft);
    case 'correct':
      return correct(entry, deed, draft);
    case 'discard':
      return discard(entry, deed, draft);
    case 'undo':
      return null;
    default:
      return unreachable(deed);
  }
}

function put({ occasion, booking, note }: Entry, { piece }: Put, { pieces }: Draft): Misfit | null {
  const before = pieces.get(piece.name);
  if (before !== undefined) return misfitOf(before) ?? 'already on the rack';
  const { job, time } = occasion;
  pieces.set(piece.name, { piece, note, job, time, where: { kind: 'rack' }, booking });
  return null;
}

function take({ occasion, booking }: Entry, deed: Take, draft: Draft): Misfit | null {
  const { job } = occasion;
  if (deed.from === 'job') draft.used.push({ job, board: deed.name, piece: deed.piece, booking });
  else {
    const held = draft.pieces.get(deed.name);
    const misfit = held === undefined ? 'not on the rack' : misfitOf(held);
    if (held === undefined || misfit !== null) return misfit;
    draft.pieces.set(deed.name, { ...held, where: { kind: 'taken', job, booking } });
  }
  for (const made of deed.made) draft.made.push(made);
  return null;
}

function correct({ note }: Entry, { piece }: Correct, { pieces }: Draft): Misfit | null {
  const held = pieces.get(piece.name);
  if (held === undefined) return 'not on the rack';
  const misfit = misfitOf(held);
  if (misfit === null) pieces.set(piece.name, { ...held, piece, note });
  return misfit;
}

function discard({ booking }: Entry, { name }: Discard, { pieces }: Draft): Misfit | null {
  const held = pieces.get(name);
  if (held === undefined) return 'not on the rack';
  const misfit = misfitOf(held);
  if (misfit === null) pieces.set(name, { ...held, where: { kind: 'discarded', booking } });
  return misfit;
}

function misfitOf({ where }: Held): Misfit | null {
  if (where.kind === 'rack') return null;
  return where.kind === 'taken' ? 'taken before' : 'discarded before';
}

/** The pieces that are on the rack now, oldest first. */
export function onRack(rack: Rack): readonly Held[] {
  return [...rack.pieces.values()].filter(({ where }) => where.kind === 'rack');
}
