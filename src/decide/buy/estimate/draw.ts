import { random } from '../../../base/random/random.ts';
import { type RunInStretches, breakWays } from '../../../flow/choice/runs/break-way.ts';
import type { Board } from '../../../flow/stock/board.ts';
import type { Job } from '../../../flow/stock/job.ts';
import { yardFeet } from '../../../trade/board-feet.ts';
import { type DrawnBoard, drawBoard } from '../lumber/draw-board.ts';
import { type DrawnGrade, drawnGrades } from '../lumber/population.ts';
import type { ComesOut, ComingOut } from '../comes-out/completer.ts';
import { leastFor } from './cart.ts';
import { mayComeOut } from './may-come-out.ts';
import { type Pile, pickBoards, pileOf, spares } from './pick-boards.ts';
import { type Wanted, wantedName, wantedPieces } from './wanted.ts';

/** The lumber to be imagined: one grade of one thickness, as sold. */
export interface Lumber {
  readonly grade: DrawnGrade;
  readonly nominalThickness: string;
  readonly nominalInches: number;
  readonly dressedThickness: Board['dressedThickness'];
  readonly surface: Board['surface'];
  /** What the buyer matches: the species and tone that the parts that show are bound to; '' for none. */
  readonly species: string;
  readonly tone: string;
}

/** One imaginary visit to the yard. */
export interface Visit {
  /**
   * Board feet in the cart after each board, in the order they are taken: surface measure × nominal thickness, as a yard
   * tallies. The list goes on past the board that completes the job.
   */
  readonly cart: readonly number[];
  /** How many boards it takes until the job comes out of them and what is owned; null: not out of this pile. */
  readonly enough: number | null;
  /** Of the boards that were enough: area of the pieces on them, and their own area. Square ticks; 0 when none. */
  readonly pieceArea: number;
  readonly boardArea: number;
  /** Names of parts and runs that no board of the pile could give. */
  readonly unfound: readonly string[];
  /** Runs that had to be broken for the job to come out of this pile; none where all are whole, or where it does not come out. */
  readonly broken: readonly RunInStretches[];
  /** Of the boards that were enough: what each was looked for, as far as it was for something. */
  readonly sought: readonly Sought[];
  /** Board feet bought before, of another grade, for what is hardest to find; 0 where one grade is asked for. */
  readonly before: number;
}

/** A piece or strip that a board was looked for: its blank, ticks. */
export interface Sought {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  /** For one of the strips that the piece is glued up from. */
  readonly isStrip: boolean;
}

/** Boards in the pile of one visit: some 250 to 400 board feet, a stack as a small yard has it (ours). */
export const pileSize = 40;
/** Boards tried beyond those the cut list needs by eye, before the visit counts as failed. */
const mostSpares = 6;

/**
 * One visit: a fresh pile, picked through by a person (`pickBoards`), then laid out: the fewest boards, in the order taken,
 * out of which the job comes. Where a run does not come out of the pile whole, it is broken in the best way that does.
 * @param job its boards are those owned; they cost nothing
 * @param visit number of the visit: with the seed and grade it fixes the pile
 */
export function drawVisit(job: Job, lumber: Lumber, seed: number, visit: number, comesOut: ComesOut): Visit {
  const found = pileOfVisit(lumber, seed, visit);
  let last: Visit | null = null;
  for (const way of breakWays(job)) {
    last = visitTo(way.job, found, comesOut);
    if (last.enough !== null)
      return { ...last, broken: way.runs.filter(({ stretches }) => stretches.length > 1) };
  }
  return last!;
}

/** The visit with the runs as they are in this job. */
function visitTo(job: Job, { pile, feet }: FoundPile, comesOut: ComesOut): Visit {
  const { needed, lookedFor, unfound } = pickBoards(job, pile);
  const order = [...firstOf(inOrder(job, pile, needed), needed.length + mostSpares)];
  const found = unfound.length === 0 ? leastPrefix(job, pile, order, needed.length, comesOut) : null;
  let total = 0;
  return {
    cart: order.map((at) => (total += feet(at))),
    enough: found === null ? null : found.boards.length,
    ...areas(found, job.boards.length),
    unfound: unfound.map(wantedName),
    sought: lookedFor.slice(0, found?.boards.length ?? 0).map(soughtOf),
    before: 0,
    broken: [],
  };
}

function soughtOf(piece: Wanted): Sought {
  const whole = piece.parts.length > 1 ? null : piece.parts[0]!;
  return {
    name: wantedName(piece),
    length: piece.length,
    width: piece.width,
    isStrip: whole !== null && whole.grain !== 'across' && piece.width < whole.width,
  };
}

/**
 * One visit with two piles: what is hardest to find comes out of the first, of a better grade, and the rest out of what
 * is left of those boards and of the second.
 * @param hardest names of the things looked for in the first pile (`wantedName`)
 */
export function drawMixedVisit(
  job: Job,
  first: Lumber,
  hardest: string,
  lumber: Lumber,
  seed: number,
  visit: number,
  comesOut: ComesOut,
): Visit {
  const { pile, feet } = pileOfVisit(first, seed, visit);
  const list = wantedPieces(job).filter((piece) => wantedName(piece) === hardest);
  const { needed, lookedFor, unfound } = pickBoards(job, pile, list);
  const bought = needed.map((at) => ({ ...pile.board(at), name: `better ${at + 1}` }));
  const rest = drawVisit({ ...job, boards: [...job.boards, ...bought] }, lumber, seed, visit, comesOut);
  const isFound = unfound.length === 0;
  return {
    ...rest,
    enough: isFound ? rest.enough : null,
    unfound: [...unfound.map(wantedName), ...rest.unfound],
    sought: [...lookedFor.map(soughtOf), ...rest.sought],
    before: needed.reduce((sum, at) => sum + feet(at), 0),
  };
}

/** The pile that a visit finds, and the board feet of each of its boards as a yard tallies them. */
interface FoundPile {
  readonly pile: Pile;
  readonly feet: (at: number) => number;
}

function pileOfVisit(lumber: Lumber, seed: number, visit: number): FoundPile {
  const stream = random(seed, visit * drawnGrades.length + drawnGrades.indexOf(lumber.grade));
  const pile = pileOf(pileSize, (at) =>
    asBoard(drawBoard(stream, lumber.grade), lumber, `imaginary ${at + 1}`),
  );
  return { pile, feet: (at) => pile.board(at).yardFeet };
}

/** Places in the pile in the order in which boards are taken: those that the eye needs, then spares. */
function* inOrder(job: Job, pile: Pile, needed: readonly number[]): Generator<number> {
  yield* needed;
  yield* spares(job, pile, new Set(needed));
}

function* firstOf(places: Iterable<number>, most: number): Generator<number> {
  let count = 0;
  for (const at of places) {
    if (count === most) return;
    count += 1;
    yield at;
  }
}

/**
 * Whether the job comes out of a fresh pile when one asks for a quantity: the cart is filled as `boardsTaken` says, and what
 * is in it is laid out once, all of it. The test of a quantity found from other visits.
 */
export function completes(
  job: Job,
  lumber: Lumber,
  seed: number,
  visit: number,
  boardFeet: number,
  comesOut: ComesOut,
): boolean {
  const { pile, feet } = pileOfVisit(lumber, seed, visit);
  const ways = breakWays(job).map((way) => way.job);
  const looked = ways.map((way) => ({ way, ...pickBoards(way, pile) }));
  const { way: sought, needed } = looked.find(({ unfound }) => unfound.length === 0) ?? looked.at(-1)!;
  const boards: Board[] = [];
  let cart = 0;
  for (const at of inOrder(sought, pile, needed)) {
    if (leastFor([cart, cart + feet(at)], 2) > boardFeet) break;
    boards.push(pile.board(at));
    cart += feet(at);
  }
  const held = [...job.boards, ...boards];
  return ways.some((way) => comesOut({ ...way, boards: held }) !== null);
}

interface Found {
  readonly boards: readonly Board[];
  /** Area of the pieces on each board of the job, then on each of these. */
  readonly areas: ComingOut;
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
  comesOut: ComesOut,
): Found | null {
  const list = wantedPieces(job);
  const trial = (count: number): Found | null => {
    const boards = order.slice(0, count).map((at) => pile.board(at));
    const all = [...job.boards, ...boards];
    const found = mayComeOut(job, list, all) ? comesOut({ ...job, boards: all }) : null;
    return found === null ? null : { boards, areas: found };
  };
  let best = trial(byEye);
  if (best === null) return order.length > byEye ? bisected(byEye, trial(order.length), trial) : null;
  while (best.boards.length > 0) {
    const fewer = trial(best.boards.length - 1);
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
  while (best.boards.length - low > 1) {
    const middle = Math.floor((low + best.boards.length) / 2);
    const tried = trial(middle);
    if (tried === null) low = middle;
    else best = tried;
  }
  return best;
}

function areas(found: Found | null, ownedRows: number): Pick<Visit, 'pieceArea' | 'boardArea'> {
  if (found === null) return { pieceArea: 0, boardArea: 0 };
  return {
    pieceArea: found.areas.slice(ownedRows).reduce((sum, area) => sum + area, 0),
    boardArea: found.boards.reduce((sum, { length, width }) => sum + length * width, 0),
  };
}

function asBoard(drawn: DrawnBoard, lumber: Lumber, name: string): Board {
  return {
    name,
    quantity: 1,
    length: drawn.length,
    width: drawn.width,
    nominalThickness: lumber.nominalThickness,
    nominalInches: lumber.nominalInches,
    yardFeet: yardFeet(drawn.length, drawn.width, lumber.nominalInches, [drawn.surfaceMeasure]),
    dressedThickness: lumber.dressedThickness,
    surface: lumber.surface,
    species: lumber.species,
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
