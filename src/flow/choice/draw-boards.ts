import { type Random, uniform } from '../../base/random/random.ts';
import type { Instance } from './instance.ts';

/** Draws, of which the one with most wood is taken. */
const draws = 6;

/** How much by chance a draw may be taken for more than its wood, and what one cheaper than any layout can be is taken for. */
const chance = 0.1;
const belowBound = 0.5;

/** Chance that no more boards are added though there is money left. */
const endsEarly = 0.1;

function sumOf(boards: readonly number[], each: (g: number) => number): number {
  return boards.reduce((sum, g) => sum + each(g), 0);
}

/** The boards without one or two of them, and others added as long as they can be paid for. */
function drawOnce(
  { groups }: Instance,
  from: readonly number[],
  copies: Int32Array,
  money: number,
  random: Random,
  mostBoards: number,
): number[] {
  const boards = from.slice();
  for (let out = uniform(random) < 0.7 ? 1 : 2; out > 0 && boards.length > 0; out -= 1)
    boards.splice(Math.floor(uniform(random) * boards.length), 1);
  if (groups.length === 1 && from.length > 0) return boards;
  const left = copies.slice();
  for (const g of boards) left[g] = left[g]! - 1;
  let rest = money - sumOf(boards, (g) => groups[g]!.cost);
  while (boards.length < mostBoards && (boards.length === 0 || uniform(random) >= endsEarly)) {
    const able = [...groups.keys()].filter((g) => left[g]! > 0 && groups[g]!.cost < rest);
    if (able.length === 0) break;
    const g = able[Math.floor(uniform(random) * able.length)]!;
    boards.push(g);
    left[g] = left[g]! - 1;
    rest -= groups[g]!.cost;
  }
  return boards;
}

/**
 * Boards that cost less than `most` together, drawn near those given: some left out, others in their stead; one of several draws, by
 * how much wood it has.
 * @param from groups of boards, one for each copy   @param copies of each group that there are
 * @param range what they are to cost; draws below `least` count for less
 * @returns groups, one for each copy
 */
export function drawBoards(
  instance: Instance,
  from: readonly number[],
  copies: Int32Array,
  { least, most }: { readonly least: number; readonly most: number },
  random: Random,
  mostBoards = Infinity,
): number[] {
  const { groups } = instance;
  let best: number[] = [];
  let wood = -1;
  for (let draw = 0; draw < draws; draw += 1) {
    const boards = drawOnce(instance, from, copies, most, random, mostBoards);
    const isBelow = sumOf(boards, (g) => groups[g]!.cost) < least * (1 - 1e-9);
    const area = sumOf(boards, (g) => groups[g]!.plate.length * groups[g]!.plate.width);
    const here = area * (1 + chance * uniform(random)) * (isBelow ? belowBound : 1);
    if (here > wood) [best, wood] = [boards, here];
  }
  return best;
}
