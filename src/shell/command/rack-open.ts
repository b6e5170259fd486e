import { resolve } from 'node:path';
import { type LengthStyle, type Rack, type Shop, defaultShop } from '../../index.ts';
import { loadRack, type RackFileProblem } from '../rack/journal-file.ts';
import type { LockBusy } from '../rack/lock.ts';
import { isSpokenFor, jobKey, rackOfJob } from '../rack/rack-place.ts';
import { noticeText, rackProblemText } from '../rack/rack-words.ts';
import { readShopOf } from '../read/job.ts';
import { exitCodes, exitWith, orEnd } from './end.ts';
import { shownPath } from './shown-path.ts';
import type { World } from './world.ts';

/** A rack that a command works on. */
export interface OpenRack {
  readonly file: string;
  /** As the reader would type it. */
  readonly shown: string;
  readonly rack: Rack;
  /** The job as the rack calls it; empty when the command has none. */
  readonly key: string;
  /** How lengths are printed and bare ones read. */
  readonly style: LengthStyle;
}

/**
 * Opens the rack of a job. What is wrong with single lines is told on stderr; a file that is no rack ends the command.
 * @param option what `--rack` says
 */
export async function openRackOfJob(
  { folder, shop }: { readonly folder: string; readonly shop: Shop },
  option: string | undefined,
  world: World,
): Promise<OpenRack> {
  const { file, overruled } = rackOfJob(folder, shop, option, world.cwd);
  const shown = shownPath(file, world);
  if (overruled !== null)
    world.stderr.write(
      `the job's shop.csv names its rack: ${shown}; --rack ${shownPath(overruled, world)} is not used\n`,
    );
  return { file, shown, rack: await load(file, world), key: jobKey(file, folder), style: shop };
}

/**
 * Opens the rack that a command about the rack alone means: that of the job if one is named, else `--rack`, else
 * `rack.csv` in the working folder.
 */
export async function openRack(
  given: string | undefined,
  option: string | undefined,
  world: World,
): Promise<OpenRack> {
  if (given !== undefined) {
    const folder = resolve(world.cwd, given);
    return openRackOfJob({ folder, shop: orEnd(await readShopOf(folder), world) }, option, world);
  }
  const file = resolve(world.cwd, option ?? 'rack.csv');
  return { file, shown: shownPath(file, world), rack: await load(file, world), key: '', style: defaultShop };
}

async function load(file: string, world: World): Promise<Rack> {
  if (isSpokenFor(file)) {
    world.stderr.write(
      `${shownPath(file, world)}: this name is for another file of a job or its results, not for a rack\n` +
        '  mend: give the rack a name of its own, such as rack.csv (setting rack of shop.csv, or --rack)\n',
    );
    exitWith(exitCodes.badInput);
  }
  const loaded = await loadRack(file);
  if ('kind' in loaded) return endRack(loaded, world);
  const shown = shownPath(file, world);
  for (const notice of [...loaded.journal.notices, ...loaded.rack.notices])
    world.stderr.write(`${noticeText(shown, notice)}\n`);
  return loaded.rack;
}

/** Ends the command over a rack that cannot be worked on. */
export function endRack(problem: RackFileProblem | LockBusy, world: World): never {
  world.stderr.write(`${rackProblemText(shownPath(problem.file, world), problem)}\n`);
  return exitWith(exitCodes.badInput);
}
