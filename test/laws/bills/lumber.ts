import { inches, ticks } from '../../../src/base/units/tick.ts';
import { type Random, chance, uniform, weighted, whole } from '../../../src/base/random/random.ts';
import type { Part } from '../../../src/flow/parts/part.ts';
import type { Board } from '../../../src/flow/stock/board.ts';
import { drawBoard } from '../../../src/decide/buy/lumber/draw-board.ts';
import type { DrawnGrade } from '../../../src/decide/buy/lumber/population.ts';
import { plainBoard } from '../random-board.ts';

/** Dollars a board foot, near which a board of each grade is priced. Ours, no source. */
const prices: Readonly<Record<DrawnGrade, number>> = { FAS: 9.8, Selects: 9.2, '1C': 6.4, '2A': 4.1 };

/** How a maker's pile is mixed: a few fine boards for what shows, common ones for the rest. Ours, no source. */
const mix: readonly (readonly [DrawnGrade, number])[] = [
  ['FAS', 3],
  ['Selects', 2],
  ['1C', 4],
  ['2A', 2],
];

/** What boards of a bill's pile have beside their size and flaws. */
export interface Pile {
  /** Tones of the boards, each as likely as the others. */
  readonly tones: readonly string[];
  /** Offcuts of a rack beside the boards. */
  readonly offcuts: number;
  /** Usable area of the boards over that of the parts. */
  readonly plenty: number;
}

/** Rough 4/4 boards of graded lumber until they hold `plenty` times the parts' area, and offcuts of earlier jobs. */
export function drawPile(stream: Random, parts: readonly Part[], { tones, offcuts, plenty }: Pile): Board[] {
  const wanted =
    plenty * parts.reduce((sum, { quantity, length, width }) => sum + quantity * length * width, 0);
  const boards: Board[] = [];
  for (let area = 0; area < wanted; area += boards.at(-1)!.length * boards.at(-1)!.width)
    boards.push(drawGraded(stream, `B${boards.length + 1}`, tones));
  for (let i = 1; i <= offcuts; i += 1) boards.push(drawOffcut(stream, `offcut ${i}`, tones));
  return boards;
}

function drawGraded(stream: Random, name: string, tones: readonly string[]): Board {
  const grade = weighted(stream, mix);
  const { length, width, surfaceMeasure, defects } = drawBoard(stream, grade);
  const perFoot = prices[grade] * (0.9 + 0.2 * uniform(stream));
  const plain = plainBoard({ name, length, width });
  const tone = tones.length === 0 ? '' : tones[whole(stream, 0, tones.length - 1)]!;
  const surface = chance(stream, 0.7) ? 'rough' : 'S3S';
  return { ...plain, grade, tone, surface, defects, cost: Math.round(surfaceMeasure * perFoot * 100) / 100 };
}

/** What an earlier job left: clear, surfaced, a third of its price. */
function drawOffcut(stream: Random, name: string, tones: readonly string[]): Board {
  const length = ticks(inches(whole(stream, 14, 48)));
  const width = ticks(inches(whole(stream, 5, 16) / 2));
  const tone = tones.length === 0 ? '' : tones[whole(stream, 0, tones.length - 1)]!;
  const cost = Math.round(((length * width) / (144 * 8128 ** 2)) * 3 * 100) / 100;
  return { ...plainBoard({ name, length, width }), surface: 'S4S', tone, cost, origin: 'rack' };
}
