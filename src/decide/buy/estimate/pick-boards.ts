import type { Board } from '../../../flow/stock/board.ts';
import type { Job } from '../../../flow/stock/job.ts';
import { copiesOf, fillBoard, seenOn } from './by-eye.ts';
import { type Wanted, wantedPieces } from './wanted.ts';

/** A pile of boards at the yard, looked at from the top. */
export interface Pile {
  readonly size: number;
  /** The board at this place, 0 on top; the same one each time. */
  readonly board: (at: number) => Board;
}

/** A pile whose boards are made when first looked at. */
export function pileOf(size: number, make: (at: number) => Board): Pile {
  const made: Board[] = [];
  const board = (at: number): Board => {
    while (made.length <= at) made.push(make(made.length));
    return made[at]!;
  };
  return { size, board };
}

/** The order in which a buyer lifts boards off a pile. */
export interface Picked {
  /** Places in the pile that the cut list needs by eye, in the order they are taken. */
  readonly needed: readonly number[];
  /** For each of these, the piece (or strip of a piece) that it was looked for. */
  readonly lookedFor: readonly Wanted[];
  /** Pieces that no board of the pile can give. */
  readonly unfound: readonly Wanted[];
}

/**
 * Picks boards from a pile the way a person does who has the cut list in hand: what is owned is filled first; then, for
 * the longest piece still missing, the pile is gone through from the top to the first board that can give it, that board
 * is taken and filled with what else fits, and so on. A piece that no board can give whole is looked for in strips where
 * its glue-up allows.
 * @param job its boards are those owned
 * @param list what is looked for, longest first
 */
export function pickBoards(job: Job, pile: Pile, list: readonly Wanted[] = wantedPieces(job)): Picked {
  let left = list;
  for (const board of copiesOf(job)) left = fillBoard({ board, taken: [] }, left, job.shop).left;
  const needed: number[] = [];
  const lookedFor: Wanted[] = [];
  const unfound: Wanted[] = [];
  while (left.length > 0) {
    const [longest, ...others] = left as readonly [Wanted, ...Wanted[]];
    const at = firstGiving(longest, pile, job, new Set(needed));
    if (at !== null) {
      needed.push(at);
      lookedFor.push(longest);
      left = fillBoard({ board: pile.board(at), taken: [] }, left, job.shop).left;
    } else {
      const strips = inStrips(longest, pile, job);
      if (strips === null) unfound.push(longest);
      left = longestFirst([...(strips ?? []), ...others]);
    }
  }
  return { needed, lookedFor, unfound };
}

/** Spares: the boards of the pile not taken yet that could give any piece at all, from the top. */
export function* spares(job: Job, pile: Pile, taken: ReadonlySet<number>): Generator<number> {
  const list = wantedPieces(job);
  for (let at = 0; at < pile.size; at += 1) {
    if (taken.has(at)) continue;
    if (list.some((piece) => gives(pile.board(at), piece, job))) yield at;
  }
}

function firstGiving(piece: Wanted, pile: Pile, job: Job, taken: ReadonlySet<number>): number | null {
  for (let at = 0; at < pile.size; at += 1) {
    if (!taken.has(at) && gives(pile.board(at), piece, job)) return at;
  }
  return null;
}

function gives(board: Board, piece: Wanted, { shop }: Job): boolean {
  return seenOn({ board, taken: [] }, piece, shop) !== null;
}

/** The piece as the fewest strips that some board of the pile can give; null when it may not be, or none can. */
function inStrips(piece: Wanted, pile: Pile, job: Job): Wanted[] | null {
  for (const { count, width } of piece.strips) {
    const strip: Wanted = { ...piece, width, mayTurn: false, strips: [] };
    if (firstGiving(strip, pile, job, new Set()) !== null) return Array.from({ length: count }, () => strip);
  }
  return null;
}

function longestFirst(list: readonly Wanted[]): Wanted[] {
  return [...list].sort((a, b) => b.length - a.length || b.width - a.width);
}
