import type { Stats } from 'node:fs';
import { type FileHandle, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { type Result, failure, isJournal, success } from '../../index.ts';
import { notRegular } from '../not-regular.ts';
import { errorCode } from '../read/text-file.ts';
import { besideName, sweepBeside } from './beside.ts';
import type { WriteProblem } from './problem.ts';

/** Bytes that hold a journal's line of column names. */
const firstLine = 4096;

/** One file to be written. */
export interface FileToWrite {
  readonly path: string;
  /** The name to give in problems. */
  readonly file: string;
  readonly text: string;
}

/** Writes one file whole or not at all: see `writeAllAtomically`. */
export async function writeAtomically(path: string, text: string): Promise<Result<void, WriteProblem>> {
  return writeAllAtomically([{ path, file: path, text }]);
}

/**
 * Writes files so that nobody ever meets half of one: each is written beside its place and flushed to the disk, and
 * only when all of them are down are they renamed into place, one after another. Whatever fails before the first rename
 * leaves every old file as it was; nothing of ours stays behind. A link keeps pointing where it points, and a file that
 * was there keeps its permissions. Only a file is written over: a device or pipe
 * stays what it is, and so does a rack, which is only ever added to. What a killed
 * process left beside its places is swept from the folders written to.
 * @returns a problem when something else is in the place, or the system refuses: the first file it refused
 */
export async function writeAllAtomically(files: readonly FileToWrite[]): Promise<Result<void, WriteProblem>> {
  const written: { readonly beside: string; readonly place: string; readonly file: string }[] = [];
  let current = '';
  try {
    for (const { path, file, text } of files) {
      current = file;
      // Asked of the path and not of where it leads: a link to a pipe leads to no path at all.
      const there = await aboutPlace(path);
      const what = there === null ? null : (notRegular(there) ?? (await isRack(path, there)));
      if (what !== null) {
        await removeAll(written);
        return failure([{ kind: 'not written on', file, what }]);
      }
      const place = await realPlace(path);
      const beside = besideName(place);
      written.push({ beside, place, file });
      await writeFlushed(beside, text, there === null ? undefined : there.mode & 0o777);
    }
    for (const { beside, place, file } of written) {
      current = file;
      await rename(beside, place);
    }
    const folders = [...new Set(written.map(({ place }) => dirname(place)))];
    await Promise.all(folders.map(flushFolder));
    await Promise.all(folders.map(sweepBeside));
    return success(undefined);
  } catch (error) {
    await removeAll(written);
    return failure([{ kind: 'not written', file: current, code: errorCode(error) }]);
  }
}

/** Where a link leads; the path itself when nothing is there yet. */
async function realPlace(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return path;
    throw error;
  }
}

/** What is there, links followed; null when nothing is. */
async function aboutPlace(path: string): Promise<Stats | null> {
  try {
    return await stat(path);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  }
}

async function isRack(path: string, about: Stats): Promise<'a rack of offcuts' | null> {
  if (!about.isFile()) return null;
  const handle = await open(path, 'r').catch(() => null);
  // What cannot be read can still be replaced, as the folder's permissions say.
  if (handle === null) return null;
  const { buffer, bytesRead } = await handle
    .read(Buffer.alloc(firstLine), 0, firstLine, 0)
    .finally(() => handle.close());
  return isJournal(buffer.toString('utf8', 0, bytesRead)) ? 'a rack of offcuts' : null;
}

async function removeAll(written: readonly { readonly beside: string }[]): Promise<void> {
  await Promise.all(written.map(({ beside }) => rm(beside, { force: true }).catch(() => undefined)));
}

async function writeFlushed(path: string, text: string, mode: number | undefined): Promise<void> {
  const handle = await open(path, 'wx', mode);
  await closing(handle, async () => {
    await handle.writeFile(text, 'utf8');
    // The mask of the process may have taken bits off the mode given to `open`.
    if (mode !== undefined) await handle.chmod(mode);
    await handle.sync();
  });
}

/** A rename is safe against a power cut only once its folder is flushed; some systems cannot, and need not. */
async function flushFolder(folder: string): Promise<void> {
  try {
    const handle = await open(folder, 'r');
    await closing(handle, () => handle.sync());
  } catch (error) {
    errorCode(error);
  }
}

async function closing(handle: FileHandle, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } finally {
    await handle.close();
  }
}
