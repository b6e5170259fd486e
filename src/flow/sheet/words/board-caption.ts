import type { Board } from '../../stock/board.ts';
import type { Job } from '../../stock/job.ts';
import type { LaidBoard } from '../../cuts/layout.ts';
import { boardTitle, named, nameText } from './named.ts';
import { lumberText, measuredFeet } from './lumber-text.ts';
import { money, percent } from './number-text.ts';
import { bare, sizeText, withUnit } from './size-text.ts';

/** A board's name as on the rack or in the file, and the facts to know it by. */
export interface BoardCaption {
  readonly title: string;
  readonly facts: readonly string[];
}

/** Size, thickness, species, grade, cost and yield of one laid-out board, each a short phrase. */
export function boardCaption(job: Job, laid: LaidBoard): BoardCaption {
  const board = named(job).boards.get(laid.board);
  const size = `${sizeText(laid, job.shop)}${job.shop.units === 'mm' ? ' mm' : '"'}`;
  return {
    title: boardTitle(laid, board),
    facts: [
      ...(board?.origin === 'rack' ? ['from the rack'] : []),
      size,
      ...(board ? stockFacts(board, job) : []),
      money(laid.cost),
      `yield ${percent(yieldOf(laid))}`,
    ],
  };
}

/** Parts over board area, 0 to 1. */
export function yieldOf(laid: LaidBoard): number {
  return laid.area.board > 0 ? laid.area.parts / laid.area.board : 0;
}

/** Thickness as sold and as dressed: `4/4 (13/16")`. */
export function thicknessText(board: Board, job: Job): string {
  const dressed = withUnit(board.dressedThickness, job.shop);
  const asWritten = nameText(board.nominalThickness, 20);
  const same = [dressed, bare(board.dressedThickness, job.shop)].includes(asWritten);
  return same ? dressed : `${asWritten} (${dressed} dressed)`;
}

function stockFacts(board: Board, job: Job): string[] {
  const words = [board.surface, nameText(board.species, 40), nameText(board.grade, 40)];
  return [
    thicknessText(board, job),
    ...words.filter((word) => word !== '(no name)'),
    `${lumberText(board.yardFeet)} tally, ${lumberText(measuredFeet(board))} measured`,
  ];
}
