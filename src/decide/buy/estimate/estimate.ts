import type { Board } from '../../../flow/stock/board.ts';
import { readGrade } from '../../../trade/grades/read-grade.ts';
import type { Grade } from '../../../trade/grades/rule.ts';
import { addPercent } from '../../../trade/purchase.ts';
import { type DrawnGrade, populations } from '../lumber/population.ts';
import type { Visit } from './draw.ts';
import type { LumberWanted } from './lumber-wanted.ts';
import { type Share, type Summary, chanceOf, shareOf, summarise } from './summary.ts';

/** Money for a board foot of a grade, and where that price comes from. */
export interface GradePrice {
  readonly perFoot: number;
  readonly source: 'given' | 'boards of that grade' | 'shop price';
}

/** The rule of thumb: the net and so many per cent, and the share of visits that it would have completed. */
export interface Thumb {
  readonly percent: number;
  readonly boardFeet: number;
  readonly chance: Share;
}

/** What the visits say of one grade. */
export interface GradeEstimate {
  readonly grade: DrawnGrade;
  readonly price: GradePrice;
  readonly summary: Summary;
  readonly thumbs: readonly Thumb[];
  /** Mean cost of the boards that were just enough, over completed visits; null when there are none. */
  readonly expectedCost: number | null;
  /** Pieces that no board of a pile could give, and in which share of the visits, the commonest first. */
  readonly unfound: readonly { readonly piece: string; readonly share: Share }[];
  /** The visits themselves, for the chart. */
  readonly visits: readonly Visit[];
}

/** The estimate for lumber of one thickness; no grades where the owned boards suffice and nothing has to be bought. */
export interface LumberEstimate {
  readonly wanted: LumberWanted;
  readonly grades: readonly GradeEstimate[];
}

/** Rules of thumb set beside the estimate: 20 and 30 % (TRADE 6: shop tips), 50 % (trade advice for common grades). */
export const thumbPercents = [20, 30, 50] as const;

/** What the visits for one grade say. @param visits not empty   @param thicknesses as of `summarise` */
export function gradeEstimate(
  wanted: LumberWanted,
  grade: DrawnGrade,
  price: GradePrice,
  visits: readonly Visit[],
  thicknesses = 1,
): GradeEstimate {
  const summary = summarise(visits, thicknesses);
  return {
    grade,
    price,
    summary,
    thumbs: thumbPercents.map((percent) => {
      const boardFeet = Math.ceil(addPercent(wanted.netBoardFeet, percent) - 1e-9);
      return { percent, boardFeet, chance: chanceOf(visits, boardFeet) };
    }),
    expectedCost: summary.meanEnough === null ? null : summary.meanEnough * price.perFoot,
    unfound: unfoundOf(visits),
    visits,
  };
}

function unfoundOf(visits: readonly Visit[]): GradeEstimate['unfound'] {
  const counts = new Map<string, number>();
  for (const { unfound } of visits) {
    for (const piece of new Set(unfound)) counts.set(piece, (counts.get(piece) ?? 0) + 1);
  }
  return [...counts]
    .sort(([, a], [, b]) => b - a)
    .map(([piece, count]) => ({ piece, share: shareOf(count, visits.length) }));
}

/**
 * Money per board foot of a grade: as given; else the mean of the job's and yard's boards of that grade, by the board
 * foot; else the shop's price. Boards called F1F count as Selects, whose population they share.
 */
export function priceOf(
  grade: DrawnGrade,
  given: ReadonlyMap<DrawnGrade, number>,
  boards: readonly Board[],
  shopPrice: number,
): GradePrice {
  const price = given.get(grade);
  if (price !== undefined) return { perFoot: price, source: 'given' };
  const grades: readonly (Grade | null)[] = populations.get(grade)!.grades;
  const own = boards.filter((board) => board.cost > 0 && grades.includes(readGrade(board.grade)));
  if (own.length === 0) return { perFoot: shopPrice, source: 'shop price' };
  const feet = own.reduce((sum, board) => sum + board.yardFeet, 0);
  return { perFoot: own.reduce((sum, { cost }) => sum + cost, 0) / feet, source: 'boards of that grade' };
}
