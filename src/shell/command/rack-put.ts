import { join } from 'node:path';
import type { Command } from 'commander';
import {
  type CheckProblem,
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
import { type Booked, book, refuse, sayBooked, timeNow } from './rack-book.ts';
import { openStockedJob } from './open-stock.ts';
import type { OpenRack } from './rack-open.ts';
import { readLayout } from './read-layout.ts';
import { type PartsOptions, ifStale, withPartsOptions } from './stale-parts.ts';
import type { World } from './world.ts';

interface PutOptions extends PartsOptions {
  readonly layout?: string;
  readonly rack?: string;
}

/** `mantelwright rack put JOB`: a layout has been cut; what it used is gone, what it left is on the rack. */
export function register(rackCommand: Command, world: World): void {
  withPartsOptions(rackCommand.command('put'), false)
    .description('book a layout that has been cut: its boards are used up, its offcuts go on the rack')
    .argument('<job>', 'job folder')
    .option('--layout <file>', 'the layout that was cut (default: out/layout.json in the job folder)')
    .option('--rack <file>', 'the rack, where the job names none (default: rack.csv beside the job folder)')
    .action((given: string, options: PutOptions) => put(given, options, world));
}

async function put(given: string, options: PutOptions, world: World): Promise<void> {
  const opening = { ifStale: ifStale(options) };
  const { folder, asWritten: job, open } = await openStockedJob(given, options, world, opening);
  if (open === null) throw new Error('a job whose shop can be read has a rack');
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
  sayBooked(textOf(booked, open), booked.booking, open, world);
}

function cutLayout(job: Job, layout: Layout, open: OpenRack): Parameters<typeof bookLayout>[1] {
  const thickness = new Map(job.parts.map((part) => [part.name, part.thickness]));
  const { knotMargin } = job.shop;
  return { boards: job.boards, thickness, knotMargin, layout, key: open.key, time: timeNow() };
}

/**
 * Ends the command when the layout fails the independent check: what was cut by it would be something else. What wood
 * costs may have changed since it was cut; then the booking goes by today's prices.
 */
function checkFirst(job: Job, { shown, layout }: { shown: string; layout: Layout }, world: World): void {
  const [ofMoney, faults] = partedFaults(verify(job, layout));
  if (faults.length === 0) {
    if (ofMoney.length > 0)
      world.stderr.write(`${shown}: prices have changed since; what it left is booked at those of today\n`);
    return;
  }
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

const moneyFaults: ReadonlySet<CheckProblem['kind']> = new Set([
  'wrong cost',
  'wrong proof',
  'bound on the wrong side',
  'not proven',
]);

/** Faults that are of money alone, and all others. */
function partedFaults(
  faults: readonly CheckProblem[],
): readonly [ofMoney: readonly CheckProblem[], others: readonly CheckProblem[]] {
  const isOfMoney = (fault: CheckProblem): boolean =>
    moneyFaults.has(fault.kind) || (fault.kind === 'wrong total' && fault.what === 'cost');
  return [faults.filter(isOfMoney), faults.filter((fault) => !isOfMoney(fault))];
}

function textOf({ booking, draft, result }: Booked<LayoutBooking>, { shown, style }: OpenRack): string {
  const lines = [`${shown}: booking ${booking}`];
  for (const { deed } of draft.deeds) {
    if (deed.action === 'take')
      lines.push(`  used up  ${quoted(deed.name)}${deed.from === 'rack' ? ' from the rack' : ''}`);
    if (deed.action !== 'put') continue;
    const { name, length, width, dressedThickness, defects } = deed.piece;
    const size = [length, width, dressedThickness].map((one) => formatLengthWithUnit(one, style)).join(' x ');
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
