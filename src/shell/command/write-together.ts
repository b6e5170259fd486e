import { randomUUID } from 'node:crypto';
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** One file to be written: its name in the folder, and all it holds. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/**
 * Writes a set of files into a folder, made when missing. Each is written beside its place first and renamed only
 * when all of them are down, so no reader ever meets half a file, and a full disk or a refused write leaves the
 * files of the last run as they were.
 * @throws the file system's error, with nothing of ours left behind
 */
export async function writeTogether(folder: string, files: readonly TextFile[]): Promise<void> {
  await mkdir(folder, { recursive: true });
  const pending = files.map(({ name, text }) => ({
    beside: join(folder, `.${randomUUID()}.part`),
    place: join(folder, name),
    text,
  }));
  try {
    for (const { beside, text } of pending) await writeFile(beside, text, { flush: true });
    for (const { beside, place } of pending) await rename(beside, place);
  } catch (error) {
    await Promise.all(pending.map(({ beside }) => rm(beside, { force: true })));
    throw error;
  }
}
