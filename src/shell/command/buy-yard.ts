import { join } from 'node:path';
import { type YardAnswer, describeFault, yardCsv, yardJson, yardPage, yardText } from '../../index.ts';
import type { Offers } from '../buy/offers.ts';
import { takeBoards } from '../buy/take-boards.ts';
import { jobFileNames } from '../read/job.ts';
import { quoted } from '../wording.ts';
import { type Buying, answer } from './buying.ts';
import { drive } from './drive.ts';
import { exitCodes, exitWith, nothingYet, orEnd } from './end.ts';
import { report } from './report.ts';
import { shownPath } from './shown-path.ts';
import type { World } from './world.ts';

/** `buy` with a yard: which of its boards to take. With `--take` they are written into `boards.csv`. */
export async function buyAtYard(buying: Buying, offers: Offers, world: World): Promise<void> {
  const { job, options, limit } = buying;
  if (offers.taken.length > 0)
    world.stderr.write(`yard.csv: taken already, by boards.csv: ${offers.taken.map(quoted).join(', ')}\n`);
  const { seed, effort, runnerUps } = options;
  const { yard } = offers;
  const { value, ended } = await drive({ kind: 'yard', job, yard, runnerUps, seed, effort }, world, limit);
  const found = value === null ? nothingYet(ended, world) : sound(value, buying, world);
  const files = [
    { name: 'buy.html', text: yardPage(job.name, found, job.shop) },
    { name: 'buy.csv', text: yardCsv(found) },
  ];
  const words = { text: yardText(found, job.shop), json: yardJson(job.name, found) };
  const untaken = options.take === true ? `${boardsFile(buying, world)}: nothing was taken` : null;
  await answer(buying, files, words, world, untaken);
  if (found.kind === 'short') exitWith(exitCodes.short);
  if (options.take === true && ended === 'interrupted')
    world.stderr.write('stopped by Ctrl-C: nothing is taken\n');
  else if (options.take === true) await take(found, buying, world);
}

/** The answer, if the independent check found nothing against the best choice's cuts; else nothing is shown. */
function sound(found: YardAnswer, { job }: Buying, world: World): YardAnswer {
  if (found.kind === 'short' || found.faults.length === 0) return found;
  const style = { units: job.shop.units, printFraction: job.shop.printFraction };
  const faults = found.faults.slice(0, 10).map((fault) => `  ${describeFault(fault, style)}\n`);
  world.stderr.write(
    `mantelwright: the choice failed its own check and is not shown; please report it with the job folder\n${faults.join('')}`,
  );
  return exitWith(exitCodes.ownFault);
}

async function take(
  { yard, best }: Extract<YardAnswer, { kind: 'complete' }>,
  buying: Buying,
  world: World,
): Promise<void> {
  const { folder, job, options } = buying;
  const taken = yard.flatMap((board, row) => {
    const quantity = best.taken[row]!;
    return quantity > 0 ? [{ ...board, quantity }] : [];
  });
  const say = (text: string, stands: string): void => {
    if (options.json === true) world.stderr.write(text);
    else report(text, stands, world);
  };
  const shown = boardsFile(buying, world);
  if (taken.length === 0) {
    say(`${shown}: nothing to take\n`, `${shown}: nothing was taken`);
    return;
  }
  orEnd(await takeBoards(folder, taken, job.shop, shown), world);
  const names = taken.map(({ name, quantity }) => `${quoted(name)}${quantity > 1 ? ` × ${quantity}` : ''}`);
  const words = `${shown}: taken ${names.join(', ')}`;
  say(`${words}\n`, words);
}

function boardsFile({ folder }: Buying, world: World): string {
  return shownPath(join(folder, jobFileNames.boards), world);
}
