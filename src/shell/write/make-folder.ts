import { mkdir, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { errorCode } from '../read/text-file.ts';

/**
 * Makes a folder and those above it that are missing. Node's own way to do so asks again for ever where the system
 * says "not there" to a folder whose parent is there (as in /proc).
 * @throws the system's error
 */
export async function makeFolder(path: string): Promise<void> {
  const missing: string[] = [];
  for (let at = path; !(await isThere(at)) && dirname(at) !== at; at = dirname(at)) missing.push(at);
  for (const folder of missing.reverse()) await mkdirOnce(folder);
}

async function mkdirOnce(folder: string): Promise<void> {
  try {
    await mkdir(folder);
  } catch (error) {
    // Somebody else has made it meanwhile.
    if (errorCode(error) !== 'EEXIST') throw error;
  }
}

async function isThere(path: string): Promise<boolean> {
  try {
    await stat(path);
    return true;
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return false;
    throw error;
  }
}
