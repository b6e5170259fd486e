import { realpathSync } from 'node:fs';
import { basename, dirname, extname, join, relative, resolve, sep } from 'node:path';
import type { Shop } from '../../index.ts';
import { jobFileNames } from '../read/job.ts';

/** Where a job's rack is, and who says so. */
export interface RackPlace {
  readonly file: string;
  /** What `--rack` said when the job's own setting overrules it; null otherwise. */
  readonly overruled: string | null;
}

/**
 * The rack of a job: its setting `rack` (from the job folder), else what `--rack` says (from the working folder), else
 * `rack.csv` beside the job folder, so that jobs lying side by side share it.
 * @param folder the job's, absolute
 */
export function rackOfJob(folder: string, shop: Shop, option: string | undefined, cwd: string): RackPlace {
  const asked = option === undefined ? null : resolve(cwd, option);
  const own = shop.rack === null || shop.rack === '' ? null : resolve(folder, shop.rack);
  const file = own ?? asked ?? join(dirname(folder), 'rack.csv');
  return { file, overruled: asked !== null && asked !== file ? asked : null };
}

const writtenKinds: ReadonlySet<string> = new Set(['.html', '.svg', '.json']);
const writtenTables: ReadonlySet<string> = new Set([
  'layout.csv',
  'cuts.csv',
  'tally.csv',
  'buy.csv',
  'faces.csv',
]);

/** Whether a rack of this name would be one of the files that the commands read, or write over. */
export function isSpokenFor(file: string): boolean {
  const name = basename(file).toLowerCase();
  return (
    writtenKinds.has(extname(name)) || writtenTables.has(name) || Object.values(jobFileNames).includes(name)
  );
}

/**
 * A job as its rack's journal calls it: its folder as seen from the rack's folder, forward slashes, links followed, so
 * that it stays true when the two are moved together.
 */
export function jobKey(rackFile: string, folder: string): string {
  const home = join(real(dirname(rackFile)), basename(rackFile));
  const path = relative(dirname(home), real(folder));
  return path === '' ? '.' : path.split(sep).join('/');
}

function real(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    // Not there (yet): then there are no links to follow.
    return path;
  }
}
