import { isAbsolute, relative } from 'node:path';
import type { World } from './world.ts';

/** A path as the reader would type it: from the folder they stand in when it lies below, else in full. */
export function shownPath(path: string, world: World): string {
  const short = relative(world.cwd, path);
  if (short === '') return '.';
  return short.startsWith('..') || isAbsolute(short) ? path : short;
}
