import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readJournal, type Journal } from '../../src/flow/rack/read-journal.ts';

const script = fileURLToPath(new URL('booking-child.js', import.meta.url));
const built = fileURLToPath(new URL('../../dist', import.meta.url));

/** What of the public door the rack's shell takes. */
const door = `
export { bookingText } from './flow/rack/booking-draft.js';
export { foldJournal } from './flow/rack/fold.js';
export { emptyJournal, readJournal } from './flow/rack/read-journal.js';
`;

/**
 * Copies the built rack into a folder, with a public door that opens on nothing else: hundreds of processes start on
 * it, and the solver's modules would cost each of them more than its bookings do. Same files, fewer of them loaded.
 */
export function leanBuild(folder: string): string {
  if (!existsSync(join(built, 'shell', 'rack', 'append-booking.js')))
    throw new Error('not built: npm run build');
  const lean = join(folder, 'built');
  const readers = ['shell/read/bounded-bytes.js', 'shell/not-regular.js'];
  for (const part of ['base', 'trade', 'flow/rack', 'flow/stock', 'shell/rack', ...readers])
    cpSync(join(built, part), join(lean, part), { recursive: true });
  writeFileSync(join(lean, 'index.js'), door);
  writeFileSync(join(lean, 'package.json'), '{ "type": "module" }');
  return lean;
}

/** A booking process and what it has told so far. */
export interface Child {
  readonly process: ChildProcess;
  /** Common names of the pieces of the bookings it has made. */
  readonly made: () => readonly string[];
  /** When it begins to book. */
  readonly ready: Promise<void>;
  /** When it has made its first booking. */
  readonly booked: Promise<void>;
  /** When it has ended; null when it was killed. Rejects when it failed. */
  readonly ended: Promise<number | null>;
}

/**
 * Starts a process that books `howMany` bookings by the built code.
 * @param lean what `leanBuild` gave
 */
export function startChild(
  lean: string,
  journal: string,
  name: string,
  howMany: number,
  manner: 'whole' | 'crumbs',
): Child {
  const args = [script, lean, journal, name, String(howMany), manner];
  const child = spawn(process.execPath, args, { stdio: 'pipe' });
  let told = '';
  let faults = '';
  child.stdout.on('data', (text) => (told += String(text)));
  child.stderr.on('data', (text) => (faults += String(text)));
  const lines = (least: number): Promise<void> =>
    new Promise((resolve) => {
      child.stdout.on('data', () => {
        if (told.split('\n').length > least) resolve();
      });
      child.on('close', () => resolve());
    });
  const ended = new Promise<number | null>((resolve, reject) => {
    child.on('close', (code) => (faults === '' ? resolve(code) : reject(new Error(faults))));
  });
  // Only whole lines count: the last one may have been cut off by the kill.
  const made = (): string[] => told.split('\n').slice(1, -1);
  return { process: child, made, ready: lines(1), booked: lines(2), ended };
}

/** The journal on the disk; a missing file is an empty one. */
export function journalAt(file: string): Journal {
  const read = readJournal(existsSync(file) ? readFileSync(file, 'utf8') : '');
  if (!read.ok) throw new Error(`${file} is no journal`);
  return read.value;
}

/** Each booking's pieces by their common name; throws when one is there in part, twice or with a stranger in it. */
export function wholeBookings(journal: Journal): ReadonlySet<string> {
  const bookings = new Map<number, string[]>();
  const counts = new Map<number, string>();
  for (const { booking, deed, note } of journal.entries) {
    if (booking === null || deed.action !== 'put') throw new Error('not an entry of ours');
    bookings.set(booking, [...(bookings.get(booking) ?? []), deed.piece.name]);
    counts.set(booking, note);
  }
  const names = new Set<string>();
  for (const [booking, pieces] of bookings) {
    const name = pieces[0]?.replace(/\.1$/, '') ?? '';
    const wanted = pieces.map((_, index) => `${name}.${index + 1}`);
    if (pieces.join() !== wanted.join()) throw new Error(`booking ${booking} is mixed: ${pieces.join()}`);
    if (counts.get(booking) !== `one of ${pieces.length}`) throw new Error(`booking ${booking} is not whole`);
    if (names.has(name)) throw new Error(`${name} is booked twice`);
    names.add(name);
  }
  return names;
}
