import fs from 'node:fs';
import { dirname } from 'node:path';
import {
  emptyJournal,
  foldJournal,
  readJournal,
  type Journal,
  type NoJournal,
  type Rack,
} from '../../index.ts';
import type { NotRead } from '../read/bounded-bytes.ts';
import { bytesOfLines, decodeJournal } from './decode.ts';
import { disk as realDisk, type Disk } from './disk.ts';
import { withLock, type LockBusy } from './lock.ts';

/** A rack as loaded from its file. */
export interface LoadedRack {
  readonly file: string;
  readonly journal: Journal;
  readonly rack: Rack;
}

/** Why a file could not be loaded as a rack. */
export type RackFileProblem =
  | (NoJournal & { readonly file: string })
  | { readonly kind: 'rack in UTF-16'; readonly file: string }
  | { readonly kind: 'rack not read'; readonly file: string; readonly why: NotRead };

/** The bytes beside what they mean: what an appender needs. */
export interface LoadedBytes extends LoadedRack {
  readonly bytes: Buffer;
}

/**
 * Loads a rack as it stands, without a lock. No file is an empty rack.
 * @throws the system's error when the file cannot be read
 */
export function loadNow(file: string, disk: Disk = realDisk): LoadedBytes | RackFileProblem {
  const bytes = disk.read(file);
  if (bytes === null) {
    return { file, journal: emptyJournal, rack: foldJournal([]), bytes: Buffer.alloc(0) };
  }
  if ('kind' in bytes) return { kind: 'rack not read', file, why: bytes };
  const decoded = decodeJournal(bytes);
  if (!decoded.ok) return { kind: 'rack in UTF-16', file };
  const journal = readJournal(decoded.text);
  if (!journal.ok) return { ...journal.problems[0]!, file };
  return { file, journal: journal.value, rack: foldJournal(journal.value.entries), bytes };
}

/** A booking in progress takes far less than this; a reader waits so long for it before it calls the end torn. */
const patienceOfReaders = 2000;

/**
 * Loads a rack for reading. An end that looks torn may be a booking that is being written this moment, so then it is
 * read once more under the lock; where no lock can be had (a read-only folder), it is taken as it is.
 * @throws the system's error when the file cannot be read
 */
export async function loadRack(file: string): Promise<LoadedRack | RackFileProblem> {
  const loaded = loadNow(file);
  if ('kind' in loaded || loaded.journal.keepLines === Infinity || !isWritable(dirname(file))) return loaded;
  const again = await withLock(file, patienceOfReaders, () => loadNow(file));
  return again.held ? again.value : loaded;
}

function isWritable(folder: string): boolean {
  try {
    fs.accessSync(folder, fs.constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

/** How many bytes of the file stay: all, or those before its torn end. */
export function bytesKept({ bytes, journal }: LoadedBytes): number {
  if (journal.keepLines === Infinity) return bytes.length;
  return bytesOfLines(bytes, journal.keepLines, journal.dialect.lineEnd);
}

export type { LockBusy };
