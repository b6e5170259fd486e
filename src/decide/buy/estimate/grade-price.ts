import type { Board } from '../../../flow/stock/board.ts';
import { readGrade } from '../../../trade/grades/read-grade.ts';
import type { Grade } from '../../../trade/grades/rule.ts';
import { type DrawnGrade, populations } from '../lumber/population.ts';

/** Money for a board foot of a grade, and where that price comes from. */
export interface GradePrice {
  /** null: nobody has said. */
  readonly perFoot: number | null;
  readonly source: 'given' | 'boards of that grade' | 'none';
  /** The boards whose usual price it is: how many, the least and the most that a board foot of them costs. */
  readonly range: { readonly boards: number; readonly low: number; readonly high: number } | null;
}

/**
 * The usual price of a grade: as given, else that of the job's and the yard's boards of the grade with a price of their
 * own (those of the asked thickness, if there are any): half the board feet cost so much or less, so that one dear board
 * changes nothing. Boards called F1F count as Selects, whose population they share. The shop's price is of no grade.
 */
export function priceOf(
  grade: DrawnGrade,
  given: ReadonlyMap<DrawnGrade, number>,
  boards: readonly Board[],
  nominalInches: number,
): GradePrice {
  const price = given.get(grade);
  if (price !== undefined) return { perFoot: price, source: 'given', range: null };
  const grades: readonly (Grade | null)[] = populations.get(grade)!.grades;
  const ofGrade = boards.filter(
    (board) =>
      board.unpriced !== true &&
      board.cost > 0 &&
      board.yardFeet > 0 &&
      grades.includes(readGrade(board.grade)),
  );
  const alike = ofGrade.filter((board) => board.nominalInches === nominalInches);
  const prices = (alike.length > 0 ? alike : ofGrade)
    .map(({ cost, yardFeet, quantity }) => ({
      perFoot: cost / yardFeet,
      feet: yardFeet * quantity,
      quantity,
    }))
    .sort((a, b) => a.perFoot - b.perFoot);
  if (prices.length === 0) return { perFoot: null, source: 'none', range: null };
  return {
    perFoot: usual(prices),
    source: 'boards of that grade',
    range: {
      boards: prices.reduce((sum, { quantity }) => sum + quantity, 0),
      low: prices[0]!.perFoot,
      high: prices.at(-1)!.perFoot,
    },
  };
}

/** The median by board feet. @param prices not empty, cheapest first */
function usual(prices: readonly { readonly perFoot: number; readonly feet: number }[]): number {
  const half = prices.reduce((sum, { feet }) => sum + feet, 0) / 2;
  let below = 0;
  for (const { perFoot, feet } of prices) {
    below += feet;
    if (below >= half) return perFoot;
  }
  return prices.at(-1)!.perFoot;
}

/** Money for so many board feet; null where either is not known. */
export function moneyFor(feet: number | null, { perFoot }: GradePrice): number | null {
  return feet === null || perFoot === null ? null : feet * perFoot;
}
