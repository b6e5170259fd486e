import { join } from 'node:path';
import type { Command } from 'commander';
import {
  type Job,
  type Layout,
  type LayoutBooking,
  type Rack,
  bookLayout,
  describeFault,
  formatLengthWithUnit,
  stockedJob,
  verify,
} from '../../index.ts';
import { quoted } from '../wording.ts';
import { exitCodes, exitWith } from './end.ts';
import { openJob } from './open-job.ts';
import { type Booked, book, refuse, timeNow } from './rack-book.ts';
import { type OpenRack, openRackOfJob } from './rack-open.ts';
import { readLayout } from './read-layout.ts';
import type { World } from './world.ts';

/** `mantelwright rack put JOB`: a layout has been cut; what it used is gone, what it left is on the rack. */
export function register(rackCommand: Command, world: World): void {
  rackCommand
    .command('put')
    .description('book a layout that has been cut: its boards are used up, its offcuts go on the rack')
    .argument('<job>', 'job folder')
    .option('--layout <file>', 'the layout that was cut (default: out/layout.json in the job folder)')
    .option('--rack <file>', 'the rack, where the job names none (default: rack.csv beside the job folder)')
    .action((given: string, options: { layout?: string; rack?: string }) => put(given, options, world));
}

async function put(given: string, options: { layout?: string; rack?: string }, world: World): Promise<void> {
  const { folder, job } = await openJob(given, world);
  const open = await openRackOfJob({ folder, shop: job.shop }, options.rack, world);
  const file = options.layout ?? join(folder, 'out', 'layout.json');
  const { shown, layout } = await readLayout(file, 'lay the job out first: mantelwright layout', world);
  const make = (rack: Rack): ReturnType<typeof bookLayout> => bookLayout(rack, cutLayout(job, layout, open));

  // First against the rack as it was seen, so that a layout that cannot be booked is refused with the nearest reason.
  const tried = make(open.rack);
  if (!tried.ok) refuse(tried.problems, world);
  checkFirst(stockedJob(job, open.rack, open.key).job, { shown, layout }, world);
  const booked = await book(
    open,
    (rack) => {
      const made = make(rack);
      return made.ok ? { ok: true, value: { draft: made.value.draft, result: made.value } } : made;
    },
    world,
  );
  world.stdout.write(report(booked, open));
}

function cutLayout(job: Job, layout: Layout, open: OpenRack): Parameters<typeof bookLayout>[1] {
  const thickness = new Map(job.parts.map((part) => [part.name, part.thickness]));
  return { boards: job.boards, thickness, layout, key: open.key, time: timeNow() };
}

/** Ends the command when the layout fails the independent check: what was cut by it would be something else. */
function checkFirst(job: Job, { shown, layout }: { shown: string; layout: Layout }, world: World): void {
  const faults = verify(job, layout);
  if (faults.length === 0) return;
  const style = { units: job.shop.units, printFraction: job.shop.printFraction };
  world.stderr.write(
    `${shown}: this layout does not fit the job and its rack as they are now, and was not booked\n` +
      faults
        .slice(0, 10)
        .map((fault) => `  ${describeFault(fault, style)}\n`)
        .join(''),
  );
  exitWith(exitCodes.badInput);
}

function report({ booking, draft, result }: Booked<LayoutBooking>, { shown, style }: OpenRack): string {
  const lines = [`${shown}: booking ${booking}`];
  for (const { deed } of draft.deeds) {
    if (deed.action === 'take')
      lines.push(`  used up  ${quoted(deed.name)}${deed.from === 'rack' ? ' from the rack' : ''}`);
    if (deed.action !== 'put') continue;
    const { name, length, width, defects } = deed.piece;
    const size = [length, width].map((one) => formatLengthWithUnit(one, style)).join(' x ');
    const flaws =
      defects.length === 0 ? '' : `, ${defects.length} marked ${defects.length === 1 ? 'flaw' : 'flaws'}`;
    lines.push(`  kept     ${name}  ${size}${flaws}`);
  }
  for (const { from, to } of result.renamed)
    lines.push(
      `  the name ${quoted(from)} was given to another piece meanwhile: write ${to} on that one instead`,
    );
  return `${lines.join('\n')}\n`;
}
