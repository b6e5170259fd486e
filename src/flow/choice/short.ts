import { formatLength } from '../../base/units/format-length.ts';
import { ticks } from '../../base/units/tick.ts';
import { blankOf } from '../parts/blank.ts';
import { suits } from '../parts/match.ts';
import type { Part } from '../parts/part.ts';
import type { Job } from '../stock/job.ts';
import { usable } from '../stock/usable.ts';
import { facesFor } from './build-instance.ts';

/**
 * Why a part could not be laid out in full: the nearest miss among the boards, in the maker's words.
 * @param isUnfinished the layout is one so far: what fits some board may only not have been laid out yet
 */
export function whyShort(job: Job, part: number, isUnfinished = false): string {
  const wanted = job.parts[part]!;
  const boards = job.boards.filter((board) => suits(wanted, board));
  if (boards.length === job.boards.length || wanted.pin !== null) return nearestMiss(job, part, isUnfinished);
  if (boards.length === 0) return noneOfSpecies(job, wanted);
  return `${nearestMiss({ ...job, boards }, part, isUnfinished)}${onlyFrom(job, wanted)}`;
}

function noneOfSpecies({ boards }: Job, { species }: Part): string {
  const names = [...new Set(boards.map((board) => board.species))].filter((name) => name !== '');
  return `there are no boards of ${species}; the boards are ${names.slice(0, 5).join(', ')}${names.length > 5 ? ' …' : ''}`;
}

/** Which boards alone it could come from; their species is said where the job has more than one. */
function onlyFrom({ boards }: Job, { show, species, match }: Part): string {
  const several = new Set(boards.map((board) => board.species)).size > 1;
  const name = species === '' ? (match?.species?.[0] ?? null) : species;
  const tone = match?.tone ?? null;
  const words = [
    ...(!several || name === null ? [] : [name === '' ? 'without a species' : `of ${name}`]),
    ...(tone === null ? [] : [tone === '' ? 'without a tone' : `of the tone ${tone}`]),
  ];
  if (show === 0 || match === undefined) return `; it comes from boards ${words.join(' and ')} alone`;
  const mends = [
    ...(tone === null ? [] : ['"show tone,any" in shop.csv mixes tones']),
    ...(several && species === '' ? ['"show species,any" mixes species'] : []),
  ];
  const mend = mends.length === 0 ? '' : ` (${mends.join('; ')})`;
  return `; here all that shows${species === '' ? '' : ` and asks for ${species}`} comes from boards ${words.join(' and ')}${mend}`;
}

/** A part of its run that cannot lie along the strip; null where there is none, or no run. */
function acrossInRun({ parts }: Job, { run }: Part): Part | null {
  const members = parts.filter((part) => run !== null && part.run === run && part.quantity > 0);
  return members.length < 2 ? null : (members.find(({ grain }) => grain === 'across') ?? null);
}

function nearestMiss(job: Job, part: number, isUnfinished: boolean): string {
  const wanted = job.parts[part]!;
  const turned = acrossInRun(job, wanted);
  if (turned !== null)
    return `a run is cut along the grain, and that of ${turned.name} is to run across: take it out of the run, or leave its grain empty`;
  const style = { units: job.shop.units, printFraction: job.shop.printFraction };
  const blank = blankOf(wanted, job.shop, 1);
  if (job.boards.length === 0) return 'there are no boards';
  if (wanted.pin !== null && !job.boards.some((board) => board.name === wanted.pin?.board)) {
    return `its board ${wanted.pin.board} is not at hand: it is used up, or left out`;
  }
  const thick = job.boards.filter((board) => facesFor(wanted, board).length > 0);
  if (thick.length === 0) {
    const most = job.boards.reduce((a, b) => (b.dressedThickness > a.dressedThickness ? b : a));
    return `needs ${formatLength(wanted.thickness, style)} thick; the thickest board, ${most.name}, dresses to ${formatLength(most.dressedThickness, style)}`;
  }
  const across = wanted.grain === 'across';
  const either = wanted.grain === 'any';
  const need = across ? { length: blank.width, width: blank.length } : blank;
  const room = thick.map((board) => ({ board, area: usable(board, job.shop) }));
  const holds = (area: { length: number; width: number }): boolean =>
    (area.length >= need.length && area.width >= need.width) ||
    (either && area.length >= need.width && area.width >= need.length);
  if (!room.some(({ area }) => holds(area))) {
    const near = room.reduce((a, b) => (shortfall(b.area, need) < shortfall(a.area, need) ? b : a));
    const size = (of: { length: number; width: number }): string =>
      `${formatLength(ticks(Math.max(0, of.length)), style)} × ${formatLength(ticks(Math.max(0, of.width)), style)}`;
    return `needs ${size(need)}; the nearest board, ${near.board.name}, has ${size(near.area)} once trimmed`;
  }
  if (isUnfinished) return 'not laid out before it was stopped';
  return 'the boards that could hold it have no clear stretch left of that size';
}

function shortfall(area: { length: number; width: number }, need: { length: number; width: number }): number {
  return (
    Math.max(0, need.length - area.length) / need.length + Math.max(0, need.width - area.width) / need.width
  );
}
