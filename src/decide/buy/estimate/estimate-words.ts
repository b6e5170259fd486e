import { counted, decimal, money, percent } from '../../../flow/sheet/words/number-text.ts';
import { stretchWords } from '../../../flow/sheet/words/grain-words.ts';
import { nameText } from '../../../flow/sheet/words/named.ts';
import { pileSize } from './draw.ts';
import type { GradeEstimate, LumberEstimate, Thumb } from './estimate.ts';
import { type GradePrice, moneyFor } from './grade-price.ts';
import type { Quantity, Share } from './summary.ts';

/** An estimate for a job: the lumber of each thickness, and how it was drawn. */
export interface JobEstimate {
  readonly lumber: readonly LumberEstimate[];
  readonly seed: number;
  /** Visits for each grade. */
  readonly visits: number;
  /** Names of boards counted as owned, with their copies. */
  readonly owned: number;
  /** Parts that no standard thickness gives. */
  readonly tooThick: readonly string[];
}

/** `34.5 (31.0 to 36.5)`; words where the visits do not reach the chance, or do not say how much more it may be. */
export function quantityText({ boardFeet, low, high }: Quantity): string {
  if (boardFeet === null) return 'not reached';
  if (low === null && high === null) return decimal(boardFeet, 1);
  const span =
    low === null ? `up to ${decimal(high!, 1)}` : high === null ? `at least ${decimal(low, 1)}` : null;
  return `${decimal(boardFeet, 1)} (${span ?? `${decimal(low!, 1)} to ${decimal(high!, 1)}`})`;
}

/** Money for a quantity: what comes home, at the grade's price. */
export function costText(quantity: Quantity, price: GradePrice): string {
  const cost = moneyFor(quantity.broughtHome, price);
  return cost === null ? '' : money(cost);
}

/** `84 % (78 to 88)` */
export function shareText({ share, low, high }: Share): string {
  const whole = (value: number): string => `${Math.round(100 * value)}`;
  return `${whole(share)} % (${whole(low)} to ${whole(high)})`;
}

/** `net + 30 % = 22 BF` */
export function thumbText({ percent: added, boardFeet }: Thumb): string {
  return `net + ${added} % = ${decimal(boardFeet, 0)} BF`;
}

/** Expected yield with its interval. */
export function yieldText({ summary }: GradeEstimate): string {
  if (summary.yield === null) return '';
  const span =
    summary.yieldLow === null || summary.yieldHigh === null
      ? ''
      : ` (${Math.round(100 * summary.yieldLow)} to ${Math.round(100 * summary.yieldHigh)})`;
  return `${percent(summary.yield)}${span}`;
}

/** What a grade costs, and where that price comes from, with its range. */
export function priceText({ grade, price }: Pick<GradeEstimate, 'grade' | 'price'>): string {
  const { perFoot, range } = price;
  if (perFoot === null) return `${grade}: no price known; ask the yard, then say --prices ${grade}=…`;
  const at = `${grade} at ${money(perFoot)} a board foot`;
  if (range === null) return `${at}, as given`;
  const boards = counted(range.boards, 'board');
  return range.high - range.low < 0.005
    ? `${at}, from ${boards} of that grade in your files`
    : `${at}, the usual price of ${boards} of that grade in your files (${money(range.low)} to ${money(range.high)})`;
}

/** What holds a grade up, where pieces could not be had in at least one visit of ten. */
export function unfoundWords({ grade, unfound }: GradeEstimate): string[] {
  return unfound
    .filter(({ share }) => share.share >= 0.1)
    .map(({ piece, share }) => {
      const many = `${Math.round(100 * share.share)} % of the piles`;
      return `${grade}: in ${many} no board gives ${nameText(piece, 120)}`;
    });
}

/** What grain a grade's quantities buy, where a run had to be broken in some visit: how often it is whole, and how it is cut else. */
export function grainWords({ grade, summary, visits }: GradeEstimate): string[] {
  const broken = visits.filter((visit) => visit.broken.length > 0);
  if (broken.length === 0) return [];
  const ways = new Map<string, number>();
  for (const visit of broken) {
    const words = visit.broken.map(
      ({ run, stretches }) => `${nameText(run, 40)} as ${stretchWords(stretches)}`,
    );
    ways.set(words.join('; '), (ways.get(words.join('; ')) ?? 0) + 1);
  }
  const [most] = [...ways].sort(([, a], [, b]) => b - a);
  const shares = summary.quantities
    .filter(({ grainWhole }) => grainWhole !== null)
    .map(({ chance, grainWhole }) => `${Math.round(100 * grainWhole!)} % at ${Math.round(100 * chance)} %`);
  const whole =
    shares.length === 0
      ? ''
      : ` of the piles that these quantities complete the grain runs on whole in ${shares.join(', ')};`;
  return [`${grade}:${whole} where it does not, it is mostly cut ${most![0]}`];
}

/** How the estimate was made, and how far to trust it. */
export function methodWords({ seed, visits, owned, lumber }: JobEstimate): string[] {
  const first =
    owned === 0
      ? 'Nothing is counted as owned.'
      : `${counted(owned, 'owned board')} counted first, at no cost; what is bought matches them in species and tone.`;
  if (lumber.every(({ grades }) => grades.length === 0)) return [first];
  return [
    `${first} For each grade ${counted(visits, 'imaginary visit')} to the yard, seed ${seed}.`,
    `Each visit finds a fresh pile of ${pileSize} boards of the grade. For the longest piece still missing, the first board that gives it is taken and filled; the solver then lays the job out on as few of the taken boards as suffice.`,
    'Quantities are surface measure × nominal thickness, as a yard tallies. Boards come whole: take them as long as each brings the cart nearer to the quantity. What comes home that way, now a little more and now a little less, is what is costed, and what the chance is of. In brackets: 95 % intervals, from the number of visits alone.',
    'The pile follows published means of red oak lumber (Wiedenbeck, Gatchell and Walker 1995): surface measure, defect area, main kinds. Lengths, widths, and sizes and places of single defects are assumed. Your yard may differ.',
    'Yield is parts over the area of the boards that were just enough, over the visits out of which the job came.',
  ];
}
