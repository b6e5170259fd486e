import { random } from '../../../base/random/random.ts';
import type { Choice } from '../../../flow/choice/choice.ts';
import type { Board } from '../../../flow/stock/board.ts';
import type { Job } from '../../../flow/stock/job.ts';
import { type DrawnBoard, drawBoard } from '../lumber/draw-board.ts';
import { type DrawnGrade, drawnGrades } from '../lumber/population.ts';
import type { SolveJob } from '../solve-job.ts';
import { mayComeOut } from './may-come-out.ts';
import { type Pile, pickBoards, pileOf, spares } from './pick-boards.ts';
import { wantedPieces } from './wanted.ts';

/** The lumber to be imagined: one grade of one thickness, as sold. */
export interface Lumber {
  readonly grade: DrawnGrade;
  readonly nominalThickness: string;
  readonly nominalInches: number;
  readonly dressedThickness: Board['dressedThickness'];
  readonly surface: Board['surface'];
  /** What the buyer matches: the tone of the owned boards that the parts that show are bound to; '' for none. */
  readonly tone: string;
}

/** One imaginary visit to the yard. */
export interface Visit {
  /**
   * Board feet in the cart after each board, in the order they are taken: surface measure × nominal thickness. The
   * list goes on past the board that completes the job.
   */
  readonly cart: readonly number[];
  /** How many boards it takes until the job comes out of them and what is owned; null: not out of this pile. */
  readonly enough: number | null;
  /** Of the boards that were enough: area of the pieces on them, and their own area. Square ticks; 0 when none. */
  readonly pieceArea: number;
  readonly boardArea: number;
  /** Names of parts and runs that no board of the pile could give. */
  readonly unfound: readonly string[];
}

/** Boards in the pile of one visit: some 250 to 400 board feet, a stack as a small yard has it (ours). */
export const pileSize = 40;
/** Boards tried beyond those the cut list needs by eye, before the visit counts as failed. */
const mostSpares = 6;

/**
 * One visit: a fresh pile, picked through by a person (`pickBoards`), then laid out by the solver: the fewest boards,
 * in the order taken, out of which the job comes.
 * @param job its boards are those owned; they cost nothing
 * @param visit number of the visit: with the seed and grade it fixes the pile
 * @param solveFewer asked in place of `solve` about fewer boards than the eye needs; it may miss a layout but not make one
 * up, so that a quicker one costs now and then a board too many
 */
export function drawVisit(
  job: Job,
  lumber: Lumber,
  seed: number,
  visit: number,
  solve: SolveJob,
  solveFewer: SolveJob = solve,
): Visit {
  const { pile, feet } = pileOfVisit(lumber, seed, visit);
  const owned = { ...job, boards: job.boards.map((board) => ({ ...board, cost: 0 })) };
  const { needed, unfound } = pickBoards(owned, pile);
  const order = withSpares(owned, pile, needed);
  const found =
    unfound.length === 0 ? leastPrefix(owned, pile, order, needed.length, solve, solveFewer) : null;
  let total = 0;
  return {
    cart: order.map((at) => (total += feet(at))),
    enough: found === null ? null : found.count,
    ...areas(found, owned.boards.length),
    unfound: unfound.map(({ parts }) =>
      parts.length > 1 ? `the run ${parts[0]!.run ?? ''}` : parts[0]!.name,
    ),
  };
}

/** The pile that a visit finds, and the board feet of each of its boards as a yard tallies them. */
export function pileOfVisit(
  lumber: Lumber,
  seed: number,
  visit: number,
): { readonly pile: Pile; readonly feet: (at: number) => number } {
  const stream = random(seed, visit * drawnGrades.length + drawnGrades.indexOf(lumber.grade));
  const feet: number[] = [];
  const pile = pileOf(pileSize, (at) => {
    const drawn = drawBoard(stream, lumber.grade);
    feet[at] = drawn.surfaceMeasure * Math.max(1, lumber.nominalInches);
    return asBoard(drawn, lumber, `imaginary ${at + 1}`);
  });
  return { pile, feet: (at) => feet[at]! };
}

function withSpares(job: Job, pile: Pile, needed: readonly number[]): number[] {
  const order = [...needed];
  for (const at of spares(job, pile, new Set(needed))) {
    if (order.length >= needed.length + mostSpares) break;
    order.push(at);
  }
  return order;
}

interface Found {
  readonly count: number;
  readonly choice: Choice;
  readonly boards: readonly Board[];
}

/**
 * The fewest boards of the order that complete the job. More boards never hurt, so from about the number the eye needs
 * the search goes down while the job still comes out, or else up until it does.
 */
function leastPrefix(
  job: Job,
  pile: Pile,
  order: readonly number[],
  byEye: number,
  solve: SolveJob,
  solveFewer: SolveJob,
): Found | null {
  const list = wantedPieces(job);
  const trial = (count: number): Found | null => {
    const boards = order.slice(0, count).map((at) => pile.board(at));
    if (!mayComeOut(job, list, [...job.boards, ...boards])) return null;
    const ask = count < byEye ? solveFewer : solve;
    const choice = ask({ ...job, boards: [...job.boards, ...boards] });
    return choice.short.length === 0 ? { count, choice, boards } : null;
  };
  let best = trial(byEye);
  if (best === null) return order.length > byEye ? bisected(byEye, trial(order.length), trial) : null;
  while (best.count > 0) {
    const fewer = trial(best.count - 1);
    if (fewer === null) return best;
    best = fewer;
  }
  return best;
}

/** The fewest boards above a number that does not suffice, when the found one does: by halving. */
function bisected(tooFew: number, found: Found | null, trial: (count: number) => Found | null): Found | null {
  if (found === null) return null;
  let low = tooFew;
  let best = found;
  while (best.count - low > 1) {
    const middle = Math.floor((low + best.count) / 2);
    const tried = trial(middle);
    if (tried === null) low = middle;
    else best = tried;
  }
  return best;
}

function areas(found: Found | null, ownedRows: number): Pick<Visit, 'pieceArea' | 'boardArea'> {
  if (found === null) return { pieceArea: 0, boardArea: 0 };
  const bought = found.choice.patterns.filter(({ board }) => board >= ownedRows);
  const pieces = bought.flatMap((pattern) => pattern.pieces);
  return {
    pieceArea: pieces.reduce((sum, { length, width }) => sum + length * width, 0),
    boardArea: found.boards.reduce((sum, { length, width }) => sum + length * width, 0),
  };
}

/** Cost 0: the question is whether the job comes out at all, and a layout without shortage is then proven best. */
function asBoard(drawn: DrawnBoard, lumber: Lumber, name: string): Board {
  return {
    name,
    quantity: 1,
    length: drawn.length,
    width: drawn.width,
    nominalThickness: lumber.nominalThickness,
    nominalInches: lumber.nominalInches,
    dressedThickness: lumber.dressedThickness,
    surface: lumber.surface,
    species: '',
    grade: lumber.grade,
    cost: 0,
    lookA: 5,
    lookB: 5,
    tone: lumber.tone,
    note: '',
    defects: drawn.defects,
    origin: 'job',
  };
}
