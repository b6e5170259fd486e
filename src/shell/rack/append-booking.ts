import { dirname } from 'node:path';
import { bookingText, type BookingDraft, type LengthUnit, type Rack } from '../../index.ts';
import { disk as realDisk, type Disk } from './disk.ts';
import { bytesKept, loadNow, type LoadedBytes, type RackFileProblem } from './journal-file.ts';
import { withLock, type LockBusy } from './lock.ts';

/** What came of a booking. */
export type Appended<T, P> =
  | {
      readonly kind: 'booked';
      readonly booking: number;
      readonly value: T;
      readonly before: LoadedBytes;
      readonly setAside: string | null;
    }
  | { readonly kind: 'refused'; readonly problems: readonly P[] }
  | RackFileProblem
  | LockBusy;

/** What a maker of bookings answers: a draft and what else the caller wants to know, or why there is none. */
export type Made<T, P> =
  | { readonly ok: true; readonly value: { readonly draft: BookingDraft; readonly result: T } }
  | { readonly ok: false; readonly problems: readonly P[] };

/** How a booking is appended. */
export interface AppendOptions {
  readonly unit: LengthUnit;
  /** Milliseconds to wait while others book. */
  readonly patience?: number;
  readonly disk?: Disk;
}

const usualPatience = 20_000;

/**
 * Makes a booking and appends it, under the rack's lock: what `make` is shown is the rack at that moment, and nobody
 * books between. Whole lines in one write, flushed to the disk before this returns. A torn end left by a crash is kept
 * in a file beside the rack first. When anything fails, the journal is as it was.
 * @throws the system's error when the disk refuses
 */
export async function appendBooking<T, P>(
  file: string,
  make: (rack: Rack) => Made<T, P>,
  options: AppendOptions,
): Promise<Appended<T, P>> {
  const disk = options.disk ?? realDisk;
  const outcome = await withLock(file, options.patience ?? usualPatience, (): Appended<T, P> => {
    for (;;) {
      const before = loadNow(file, disk);
      if ('kind' in before) return before;
      const made = make(before.rack);
      if (!made.ok) return { kind: 'refused', problems: made.problems };
      const { booking, text } = bookingText(before.journal, made.value.draft, options.unit);
      const done = append(before, Buffer.from(text), disk);
      if (done !== 'changed') return { kind: 'booked', booking, value: made.value.result, before, ...done };
    }
  });
  return outcome.held ? outcome.value : outcome.busy;
}

/** What took the torn end, if there was one; 'changed' when a program without our lock has saved the file meanwhile. */
function append(before: LoadedBytes, bytes: Buffer, disk: Disk): { setAside: string | null } | 'changed' {
  const kept = bytesKept(before);
  const torn = before.bytes.subarray(kept);
  const setAside = torn.length === 0 ? null : `${before.file}.torn`;
  if (setAside !== null) keepAside(setAside, torn, disk);
  const handle = disk.openToAppend(before.file);
  try {
    if (disk.size(handle) !== before.bytes.length) return 'changed';
    if (setAside !== null) disk.truncate(handle, kept);
    writeAll(handle, bytes, kept, disk);
  } finally {
    disk.close(handle);
  }
  if (before.bytes.length === 0) disk.flushFolder(dirname(before.file));
  return { setAside };
}

/**
 * Writes all bytes at the end, or none: what a full disk took of them is taken back. Should even that fail, the end is
 * torn, and the next reader knows a torn end.
 */
function writeAll(handle: number, bytes: Buffer, sizeBefore: number, disk: Disk): void {
  try {
    for (let done = 0; done < bytes.length;) {
      const took = disk.write(handle, bytes.subarray(done));
      if (took <= 0) throw Object.assign(new Error('nothing was written'), { code: 'EIO', syscall: 'write' });
      done += took;
    }
    disk.flush(handle);
  } catch (error) {
    takeBack(handle, sizeBefore, disk);
    throw error;
  }
}

function takeBack(handle: number, size: number, disk: Disk): void {
  try {
    disk.truncate(handle, size);
    disk.flush(handle);
  } catch {
    // The first failure is the one to tell; the torn end that may remain is known for one at the next load.
  }
}

/** Appends the torn end to a file of its own, with a line end so that the next one stands apart; flushed. */
function keepAside(file: string, torn: Buffer, disk: Disk): void {
  const handle = disk.openToAppend(file);
  try {
    const size = disk.size(handle);
    writeAll(handle, Buffer.concat([torn, Buffer.from('\n')]), size, disk);
  } finally {
    disk.close(handle);
  }
  disk.flushFolder(dirname(file));
}
