import type { DrawnGrade } from '../lumber/population.ts';
import type { Visit } from './draw.ts';
import type { GradeEstimate } from './estimate.ts';
import type { GradePrice } from './grade-price.ts';
import { type Summary, summarise } from './summary.ts';
import type { Wanted } from './wanted.ts';
import { wantedName } from './wanted.ts';

/** Two grades bought together: boards of the better one for what is hardest to find, the cheaper one for the rest. */
export interface Mix {
  readonly better: DrawnGrade;
  readonly cheaper: DrawnGrade;
  /** What is looked for in the better grade (`wantedName`). */
  readonly hardest: string;
}

/** What the visits say of a mix, at the chance a shopping list is made for. */
export interface MixEstimate extends Mix {
  readonly visits: readonly Visit[];
  /** Board feet of the better grade on the average, and of the cheaper one to ask for. */
  readonly betterFeet: number;
  readonly cheaperFeet: number;
  readonly summary: Summary;
  /** Money for what comes home on the average. */
  readonly cost: number;
}

/** The chance that a shopping list is made for. */
export const listedChance = 0.8;

/**
 * What is hardest to find: the piece that the most visits lacked, of those that must come out of one board; where none
 * was lacking, the largest of these. null where nothing else is wanted, or nothing must be whole.
 */
export function hardestToFind(list: readonly Wanted[], grades: readonly (readonly Visit[])[]): string | null {
  const lacking = new Map<string, number>();
  for (const { unfound } of grades.flat())
    for (const name of new Set(unfound)) lacking.set(name, (lacking.get(name) ?? 0) + 1);
  const rank = (piece: Wanted): number => lacking.get(wantedName(piece)) ?? 0;
  const area = ({ length, width }: Wanted): number => length * width;
  const [first] = list
    .filter(({ strips }) => strips.length === 0)
    .sort((a, b) => rank(b) - rank(a) || area(b) - area(a));
  if (first === undefined) return null;
  const name = wantedName(first);
  return list.every((piece) => wantedName(piece) === name) ? null : name;
}

/** The pairs worth trying: both grades priced, and the better one the dearer. @param grades best first */
export function mixesOf(grades: readonly Pick<GradeEstimate, 'grade' | 'price'>[], hardest: string): Mix[] {
  return grades.flatMap(({ grade: better, price }, at) =>
    grades
      .slice(at + 1)
      .filter((other) => (other.price.perFoot ?? Infinity) < (price.perFoot ?? -Infinity))
      .map(({ grade: cheaper }) => ({ better, cheaper, hardest })),
  );
}

/** What the visits of a mix come to; null where they do not reach the chance. @param thicknesses as of `summarise` */
export function mixEstimate(
  mix: Mix,
  prices: ReadonlyMap<DrawnGrade, GradePrice>,
  visits: readonly Visit[],
  thicknesses: number,
): MixEstimate | null {
  const summary = summarise(visits, thicknesses);
  const quantity = summary.quantities.find(({ chance }) => chance === listedChance);
  const [better, cheaper] = [prices.get(mix.better)?.perFoot, prices.get(mix.cheaper)?.perFoot];
  if (quantity === undefined || quantity.boardFeet === null || quantity.broughtHome === null) return null;
  if (better === undefined || better === null || cheaper === undefined || cheaper === null) return null;
  const done = visits.filter(({ enough }) => enough !== null);
  const betterFeet = done.reduce((sum, { before }) => sum + before, 0) / done.length;
  return {
    ...mix,
    visits,
    betterFeet,
    cheaperFeet: quantity.boardFeet,
    summary,
    cost: betterFeet * better + quantity.broughtHome * cheaper,
  };
}
