import { readdir, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { isDead, nameOf, ownOwner, ownerOf } from '../rack/lock-owner.ts';

const longestKept = 24;

/**
 * Where a file is written before it is renamed into its place: hidden, in the same folder, and named for the process
 * that writes it, so that it can be told later whether that one still runs.
 */
export function besideName(place: string): string {
  const start = basename(place).slice(0, longestKept);
  return join(dirname(place), `.${start}.${nameOf(ownOwner())}.part`);
}

const leftover = /^\..+\.(\d+-\w*-\w+-[\w.]+)\.part$/s;

/** Removes what processes of this machine have left that were killed while they wrote. Failing is no fault. */
export async function sweepBeside(folder: string): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  for (const name of names) {
    const owner = leftover.exec(name)?.[1];
    if (owner !== undefined && isDead(ownerOf(owner)))
      await rm(join(folder, name), { force: true }).catch(() => undefined);
  }
}
