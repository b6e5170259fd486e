import { addPercent } from '../../../trade/purchase.ts';
import type { DrawnGrade } from '../lumber/population.ts';
import type { Visit } from './draw.ts';
import { type GradePrice, moneyFor } from './grade-price.ts';
import type { LumberWanted } from './lumber-wanted.ts';
import type { MixEstimate } from './mix.ts';
import { type Share, type Summary, chanceOf, shareOf, summarise } from './summary.ts';

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
  /** Mean cost of the boards that were just enough, over completed visits; null when there are none, or no price. */
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
  /** The cheapest mix of two grades found; null where none was tried, or none reaches the chance. */
  readonly mix: MixEstimate | null;
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
    expectedCost: moneyFor(summary.meanEnough, price),
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
