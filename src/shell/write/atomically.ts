import { randomUUID } from 'node:crypto';
import { type FileHandle, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { type Result, failure, success } from '../../index.ts';
import { errorCode } from '../read/text-file.ts';
import type { WriteProblem } from './problem.ts';

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
 * was there keeps its permissions.
 * @returns a problem when the system refuses: the first file it refused
 */
export async function writeAllAtomically(files: readonly FileToWrite[]): Promise<Result<void, WriteProblem>> {
  const written: { readonly beside: string; readonly place: string; readonly file: string }[] = [];
  let current = '';
  try {
    for (const { path, file, text } of files) {
      current = file;
      const place = await realPlace(path);
      const beside = join(dirname(place), `.${basename(place).slice(0, 40)}.${randomUUID()}.part`);
      written.push({ beside, place, file });
      await writeFlushed(beside, text, await permissions(place));
    }
    for (const { beside, place, file } of written) {
      current = file;
      await rename(beside, place);
    }
    await Promise.all([...new Set(written.map(({ place }) => dirname(place)))].map(flushFolder));
    return success(undefined);
  } catch (error) {
    await Promise.all(written.map(({ beside }) => rm(beside, { force: true }).catch(() => undefined)));
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

/** Permission bits of the file that is there; those of any new file when there is none. */
async function permissions(place: string): Promise<number | undefined> {
  try {
    return (await stat(place)).mode & 0o777;
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return undefined;
    throw error;
  }
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
