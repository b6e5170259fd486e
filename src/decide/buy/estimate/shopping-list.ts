import { waysToBreak } from '../../../flow/plan/run-break.ts';
import { kindsOf } from '../../../flow/choice/kinds.ts';
import { inches, millimetres } from '../../../base/units/tick.ts';
import type { Quality } from '../../../flow/parts/part.ts';
import type { Shop } from '../../../flow/shop/shop.ts';
import type { Job } from '../../../flow/stock/job.ts';
import type { Sought, Visit } from './draw.ts';
import type { GradeEstimate, LumberEstimate } from './estimate.ts';
import { moneyFor } from './grade-price.ts';
import { listedChance } from './mix.ts';
import type { Quantity } from './summary.ts';
import { type Wanted, wantedName, wantedPieces } from './wanted.ts';

/** A board to look for. Sizes in ticks. */
export interface BoardSought {
  /** How many of them a visit takes, in the middle; 0: it comes out of boards taken for other things. */
  readonly count: number;
  /** What it is for, and whether for one strip of a glue-up. */
  readonly name: string;
  readonly isStrip: boolean;
  /** The smallest rough board that gives it, when nothing is in the way. */
  readonly least: Size;
  /** What of it must be usable for the piece. */
  readonly clear: Size;
  readonly quality: Quality;
  /** The stretches of a run, broken in its best way; empty for all else. */
  readonly broken: readonly Size[];
}

interface Size {
  readonly length: number;
  readonly width: number;
}

/** One line that can be asked for at the yard. */
export interface Asked {
  /** What of the better grade comes first; null where one grade does for all. */
  readonly first: { readonly grade: string; readonly feet: number; readonly hardest: string } | null;
  readonly grade: string;
  readonly feet: number;
  /** null: a price is missing. */
  readonly cost: number | null;
}

/** What to carry to the yard, for lumber of one thickness. */
export interface ShoppingList {
  /** Grades and the best mix that reach the chance: priced ones first, cheapest first; then by board feet. */
  readonly asked: readonly Asked[];
  readonly boards: readonly BoardSought[];
  /** Of the first line: board feet and money more for the next higher chance; null where no visit tells. */
  readonly surer: { readonly chance: number; readonly feet: number; readonly cost: number | null } | null;
}

const surerChance = 0.95;
/** More rows than this help nobody in front of a pile. */
const mostBoards = 10;

/** The shopping list of an estimate; null where nothing has to be bought. */
export function shoppingList(lumber: LumberEstimate): ShoppingList | null {
  const { wanted, grades, mix } = lumber;
  if (grades.length === 0) return null;
  const single = grades.flatMap((estimate): Asked[] => {
    const quantity = quantityOf(estimate, listedChance);
    if (quantity === null) return [];
    const cost = moneyFor(quantity.broughtHome, estimate.price);
    return [{ first: null, grade: estimate.grade, feet: quantity.boardFeet!, cost }];
  });
  const mixed: Asked[] =
    mix === null
      ? []
      : [
          {
            first: { grade: mix.better, feet: mix.betterFeet, hardest: mix.hardest },
            grade: mix.cheaper,
            feet: mix.cheaperFeet,
            cost: mix.cost,
          },
        ];
  const asked = [...single, ...mixed].sort(
    (a, b) => (a.cost ?? Infinity) - (b.cost ?? Infinity) || (a.cost === null ? a.feet - b.feet : 0),
  );
  const best = asked[0] ?? null;
  return {
    asked,
    boards: boardsSought(wanted.job, visitsOf(lumber, best)),
    surer: best === null ? null : surerThan(lumber, best),
  };
}

function quantityOf({ summary }: Pick<GradeEstimate, 'summary'>, asked: number): Quantity | null {
  const quantity = summary.quantities.find(({ chance }) => chance === asked);
  return quantity === undefined || quantity.boardFeet === null ? null : quantity;
}

/** The visits that a line stands on; where no line reaches the chance, those of the grade with the most that came out. */
function visitsOf({ grades, mix }: LumberEstimate, best: Asked | null): readonly Visit[] {
  if ((best?.first ?? null) !== null && mix !== null) return mix.visits;
  const one = grades.find(({ grade }) => grade === best?.grade);
  return (one ?? grades.reduce((a, b) => (b.summary.completed > a.summary.completed ? b : a))).visits;
}

function surerThan({ grades, mix }: LumberEstimate, best: Asked): ShoppingList['surer'] {
  const estimate = best.first === null ? grades.find(({ grade }) => grade === best.grade)! : mix!;
  const quantity = quantityOf(estimate, surerChance);
  const usual = quantityOf(estimate, listedChance);
  if (quantity === null || usual === null) return null;
  const { price } = grades.find(({ grade }) => grade === best.grade)!;
  return {
    chance: surerChance,
    feet: quantity.boardFeet! - usual.boardFeet!,
    cost: moneyFor(quantity.broughtHome! - usual.broughtHome!, price),
  };
}

/** What must come out of one board, the largest first, and what else boards were taken for, with how many. */
function boardsSought(job: Job, visits: readonly Visit[]): BoardSought[] {
  const list = wantedPieces(job);
  const kinds = list.filter((piece, at) => list[at - 1]?.parts !== piece.parts);
  const done = visits.filter(({ enough }) => enough !== null).map(({ sought }) => sought);
  const whole = kinds
    .filter(({ strips }) => strips.length === 0)
    .map((piece) => sought(job, piece, piece, false, done));
  const strips = kinds.flatMap((piece) =>
    [{ count: 1, width: piece.width }, ...piece.strips]
      .slice(piece.strips.length === 0 ? 1 : 0)
      .map(({ count, width }) => sought(job, piece, { length: piece.length, width }, count > 1, done))
      .filter(({ count }) => count > 0),
  );
  const needed = whole.filter(
    (one) => one.count > 0 || !whole.some((other) => other !== one && holds(other, one)),
  );
  return [...needed, ...strips]
    .sort((a, b) => b.count - a.count || b.least.length * b.least.width - a.least.length * a.least.width)
    .slice(0, mostBoards)
    .sort((a, b) => b.least.length - a.least.length || b.least.width - a.least.width);
}

/** Whether a board for the first thing is large enough for the second. */
function holds({ least: a }: BoardSought, { least: b }: BoardSought): boolean {
  return a.length >= b.length && a.width >= b.width;
}

function sought(
  job: Job,
  piece: Wanted,
  clear: Size,
  isStrip: boolean,
  done: readonly (readonly Sought[])[],
): BoardSought {
  const name = wantedName(piece);
  const counts = done.map(
    (visit) =>
      visit.filter((one) => one.name === name && one.length === clear.length && one.width === clear.width)
        .length,
  );
  return {
    count: middleOf(counts),
    name,
    isStrip,
    least: roughFor(clear, job.shop),
    clear: { length: roundUp(clear.length, job.shop), width: roundUp(clear.width, job.shop) },
    quality: strictest(piece),
    broken: piece.parts.length > 1 ? stretches(job, piece) : [],
  };
}

function middleOf(counts: readonly number[]): number {
  const sorted = [...counts].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

function strictest({ parts }: Wanted): Quality {
  const order: readonly Quality[] = ['clear-2', 'clear-1', 'sound', 'any'];
  return order.find((quality) => parts.some((part) => part.quality === quality)) ?? 'any';
}

/** A rough board with its trims round the piece. */
function roughFor({ length, width }: Size, shop: Shop): Size {
  const end = shop.endTrim === 0 ? 0 : Math.max(shop.endTrim, shop.crosscutKerf);
  const edge = shop.edgeTrim === 0 ? 0 : Math.max(shop.edgeTrim, shop.ripKerf);
  const needed = {
    length: Math.max(length + 2 * end, edge === 0 ? 0 : shop.shortestRip),
    width: width + 2 * edge,
  };
  return { length: roundUp(needed.length, shop), width: roundUp(needed.width, shop) };
}

/** Up to what a tape is read to in front of a pile: 1/8 in, or whole millimetres. */
function roundUp(length: number, { units }: Shop): number {
  const step = units === 'mm' ? millimetres(1) : inches(1 / 8);
  return Math.ceil(length / step) * step;
}

/** The stretches of a run broken in the best way that breaks it at all: rough boards for each. */
function stretches(job: Job, { parts }: Wanted): Size[] {
  const most = parts.reduce((best, part) =>
    part.show > best.show || (part.show === best.show && part.length > best.length) ? part : best,
  );
  const broken = waysToBreak(
    parts.map(({ name }) => name),
    parts.indexOf(most),
  ).find((groups) => groups.length > 1);
  return (broken ?? []).map((names, at) => {
    const group = parts
      .filter(({ name }) => names.includes(name))
      .map((part) => ({ ...part, quantity: 1, run: names.length > 1 ? `stretch ${at}` : null }));
    const [kind] = kindsOf({ ...job, parts: group });
    return roughFor(kind!, job.shop);
  });
}
