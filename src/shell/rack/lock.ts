import fs from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { isCode } from './disk.ts';
import { isDead, nameOf, ownerOf, ownOwner, type Owner } from './lock-owner.ts';

/** The rack stayed locked: by whom, as far as the lock tells. */
export interface LockBusy {
  readonly kind: 'rack busy';
  readonly file: string;
  readonly lock: string;
  readonly owner: Owner | null;
}

const shortestPause = 4;
const longestPause = 40;

/**
 * Runs work while holding the lock of a file, and frees it whatever happens.
 *
 * The lock is a folder with one file in it, named for its owner:
 *
 *     rack.csv.lock/4711-88231x1f2e3d4c-k3j9x2-bench
 *                   pid  start          token  machine
 *
 * To take it, a folder with one's own file is prepared under a name of one's own and renamed to the lock's name: the
 * system lets that happen only when no folder of that name is there, or an empty one. To free it, one's own file is
 * removed, which empties it. To break the lock of an owner that is dead, the file *of that owner* is removed, by its
 * name: had somebody else taken the lock meanwhile, there would be no such file, so nobody breaks a living lock.
 *
 * Rejected: a file with the owner inside (between reading it and removing it, it may have become another's), an age
 * limit (a slow disk is no crash, and a crash should not cost the next one ten seconds), a kernel lock (Node has none).
 * @param path the file that is guarded; its folder must be there
 * @param patience milliseconds to wait for another owner
 */
export async function withLock<T>(
  path: string,
  patience: number,
  work: () => T,
): Promise<{ readonly held: true; readonly value: T } | { readonly held: false; readonly busy: LockBusy }> {
  const own = nameOf(ownOwner());
  const lock = `${path}.lock`;
  if (!(await take(path, own, patience))) return { held: false, busy: busy(path, lock) };
  try {
    sweep(path);
    return { held: true, value: work() };
  } finally {
    free(lock, own);
  }
}

async function take(path: string, own: string, patience: number): Promise<boolean> {
  const lock = `${path}.lock`;
  const prepared = `${path}.lock-${own}`;
  const end = performance.now() + patience;
  let taken = false;
  prepare(prepared, path);
  try {
    fs.writeFileSync(join(prepared, own), '');
    for (let pause = shortestPause; ; pause = Math.min(longestPause, pause * 1.5)) {
      taken = becomes(prepared, lock) || (breakDead(lock) && becomes(prepared, lock));
      if (taken || performance.now() > end) return taken;
      // By chance, so that those who wait do not all come back at once.
      await setTimeout(pause * (0.5 + Math.random()));
    }
  } finally {
    if (!taken) fs.rmSync(prepared, { recursive: true, force: true });
  }
}

/** A folder that lets nobody write fails for the file's sake: the message names the file, not our folder. */
function prepare(prepared: string, path: string): void {
  try {
    fs.mkdirSync(prepared);
  } catch (error) {
    throw error instanceof Error ? Object.assign(error, { path }) : error;
  }
}

/** Whether the prepared folder has become the lock. */
function becomes(prepared: string, lock: string): boolean {
  try {
    fs.renameSync(prepared, lock);
    return true;
  } catch (error) {
    if (isCode(error, 'ENOTEMPTY', 'EEXIST')) return false;
    // Windows renames over no folder, not even an empty one, and calls it a lack of permission.
    if (process.platform !== 'win32' || !isCode(error, 'EPERM', 'EACCES')) throw error;
    removeEmpty(lock);
    return false;
  }
}

/** Frees the lock of an owner that has died; whether there was one. */
function breakDead(lock: string): boolean {
  const dead = namesIn(lock).filter((name) => isDead(ownerOf(name)));
  for (const name of dead) fs.rmSync(join(lock, name), { force: true });
  return dead.length > 0;
}

function free(lock: string, own: string): void {
  fs.rmSync(join(lock, own), { force: true });
  removeEmpty(lock);
}

/** Folders that owners prepared and died over. */
function sweep(path: string): void {
  const start = `${basename(path)}.lock-`;
  for (const name of namesIn(dirname(path))) {
    if (name.startsWith(start) && isDead(ownerOf(name.slice(start.length))))
      fs.rmSync(join(dirname(path), name), { recursive: true, force: true });
  }
}

function removeEmpty(folder: string): void {
  try {
    fs.rmdirSync(folder);
  } catch (error) {
    // Somebody has taken it since, or removed it: both are as it should be.
    if (!isCode(error, 'ENOENT', 'ENOTEMPTY', 'EEXIST', 'EPERM', 'EBUSY')) throw error;
  }
}

function namesIn(folder: string): string[] {
  try {
    return fs.readdirSync(folder);
  } catch (error) {
    if (isCode(error, 'ENOENT')) return [];
    throw error;
  }
}

function busy(file: string, lock: string): LockBusy {
  const [name] = namesIn(lock);
  return { kind: 'rack busy', file, lock, owner: name === undefined ? null : ownerOf(name) };
}
