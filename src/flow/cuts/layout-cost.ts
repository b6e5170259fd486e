import type { BoardPattern, Choice } from '../choice/choice.ts';
import type { Job } from '../stock/job.ts';
import { cutBoard } from './cut-board.ts';

/** Nothing is favoured: the settings of fence and stop decide between trees of equal money only. */
const none = { lengths: new Set<number>(), widths: new Set<number>() };

/**
 * What layouts cost under `least cost`, kept offcuts credited; boards cut in the same way are cut up once. For jobs that
 * differ in nothing but how their parts are made.
 */
export function layoutCost(): (job: Job, choice: Choice) => number {
  const known = new Map<string, number>();
  return (job, { patterns }) =>
    patterns.reduce((sum, pattern) => {
      const key = keyOf(pattern);
      const cost = known.get(key) ?? boardCost(job, pattern);
      known.set(key, cost);
      return sum + cost;
    }, 0);
}

function keyOf({ board, pieces }: BoardPattern): string {
  const places = pieces.map(({ part, x, y, length, width, run }) => [
    ...[run === undefined ? -1 : part, x, y, length, width],
    ...[run?.run ?? -1, run?.order ?? -1],
  ]);
  return `${board}: ${places.map((place) => place.join()).join(' ')}`;
}

function boardCost(job: Job, pattern: BoardPattern): number {
  const { cost, length, width } = job.boards[pattern.board]!;
  const offcuts = cutBoard(job, pattern, none)?.offcuts ?? [];
  const area = offcuts.reduce((sum, offcut) => sum + offcut.length * offcut.width, 0);
  return cost * (1 - (job.shop.offcutCredit * area) / (length * width));
}
