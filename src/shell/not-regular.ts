import type { Stats } from 'node:fs';

/** What stands in a file's place that is neither file nor folder. */
export type NotRegular = 'a device' | 'a pipe' | 'a socket';

/** What it is, or null for a file or a folder. */
export function notRegular(about: Stats): NotRegular | null {
  if (about.isFIFO()) return 'a pipe';
  if (about.isSocket()) return 'a socket';
  return about.isFile() || about.isDirectory() ? null : 'a device';
}
