import { join } from 'node:path';
import { type Result, failure } from '../../index.ts';
import { errorCode } from '../read/text-file.ts';
import { writeAllAtomically } from '../write/atomically.ts';
import { makeFolder } from '../write/make-folder.ts';
import type { WriteProblem } from '../write/problem.ts';
import { shownPath } from './shown-path.ts';
import type { World } from './world.ts';

/** One file to be written: its name in the folder, and all it holds. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/**
 * Writes a set of files into a folder, made when missing: all whole, or none.
 * @returns a problem when the system refuses the folder or a file
 */
export async function writeTogether(
  folder: string,
  files: readonly TextFile[],
  world: World,
): Promise<Result<void, WriteProblem>> {
  try {
    await makeFolder(folder);
  } catch (error) {
    return failure([{ kind: 'not written', file: shownPath(folder, world), code: errorCode(error) }]);
  }
  return writeAllAtomically(
    files.map(({ name, text }) => {
      const path = join(folder, name);
      return { path, file: shownPath(path, world), text };
    }),
  );
}
