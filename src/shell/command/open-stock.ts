import { resolve } from 'node:path';
import {
  type ForRack,
  type Rack,
  type StockedJob,
  foldJournal,
  needsOf,
  stockedJob,
  withoutRack,
} from '../../index.ts';
import { readShopOf } from '../read/job.ts';
import { quoted } from '../wording.ts';
import { type OpenedJob, type Opening, openJob } from './open-job.ts';
import { type OpenRack, openRackOfJob } from './rack-open.ts';
import type { World } from './world.ts';

/** What `--rack FILE` and `--no-rack` make of the argument reader's options. */
export interface RackOption {
  readonly rack?: string | false;
}

/** A job as its next layout finds it: the boards it has left, and the rack. */
export interface StockedOpening extends OpenedJob {
  /** The job as its files tell it, used-up boards and all; `job` is what can be laid out now. */
  readonly asWritten: OpenedJob['job'];
  readonly stocked: StockedJob;
  readonly open: OpenRack | null;
}

/**
 * Opens a job with its rack. With `--no-rack` no piece of the rack is used, but boards that booked layouts have used
 * up stay used up: they are sawn.
 * @param opening what else `openJob` is told
 */
export async function openStockedJob(
  given: string,
  { rack: option }: RackOption,
  world: World,
  opening: Omit<Opening, 'otherBoards'>,
): Promise<StockedOpening> {
  const folder = resolve(world.cwd, given);
  const shop = await readShopOf(folder);
  // A shop that cannot be read names no rack; the job's own reading then tells what is wrong with it.
  const open = shop.ok
    ? await openRackOfJob({ folder, shop: shop.value }, option === false ? undefined : option, world)
    : null;
  const rack: Rack = open?.rack ?? foldJournal([]);
  // Every piece that ever was: a part may stay pinned to one that has been cut up, or that is left out this time.
  const names = [...rack.pieces.keys()];
  const opened = await openJob(given, world, { ...opening, otherBoards: names });
  const stocked = stockedJob(opened.job, rack, open?.key ?? '');
  for (const name of option === false ? [] : stocked.nameClashes)
    world.stderr.write(
      `${open?.shown ?? ''}: the piece ${quoted(name)} is left out, since a board of the job has its name\n`,
    );
  if (stocked.usedUp.size > 0) {
    const names = [...stocked.usedUp].map(([name, count]) =>
      count > 1 ? `${quoted(name)} × ${count}` : quoted(name),
    );
    world.stderr.write(`${open?.shown ?? ''}: used up by booked layouts of this job: ${names.join(', ')}\n`);
  }
  const job = option === false ? withoutRack(stocked.job) : stocked.job;
  return { ...opened, asWritten: opened.job, job, stocked, open };
}

/** What the rack has to say in the offcuts of the job's layouts. */
export function forRack({ job, stocked, open }: StockedOpening): ForRack {
  return { job: open?.key ?? job.name, used: stocked.names, needs: needsOf(open?.rack.made ?? []) };
}
