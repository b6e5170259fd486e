import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import { suits } from '../../../flow/parts/match.ts';
import type { Board } from '../../../flow/stock/board.ts';
import { blocks, extent } from '../../../flow/stock/clear.ts';
import type { Job } from '../../../flow/stock/job.ts';
import type { Shop } from '../../../flow/shop/shop.ts';
import { usable } from '../../../flow/stock/usable.ts';
import { clearAreas } from '../../../trade/grades/clear-areas.ts';
import type { Wanted } from './wanted.ts';

/** A board as a buyer has it in his mind's eye: what he means to cut from it, each with a kerf all round. */
export interface EyedBoard {
  readonly board: Board;
  readonly taken: readonly Rectangle[];
}

/**
 * Sees whether a piece can still come out of a board, and where it fits tightest: on either face that its pins and
 * quality allow, clear of what is meant already. An eye does not check that through cuts can part all pieces; the
 * solver does that later.
 * @returns the board with the piece on it, or null
 */
export function seenOn(eyed: EyedBoard, piece: Wanted, shop: Shop): EyedBoard | null {
  const { board, taken } = eyed;
  const pinned = piece.parts.some(({ pin }) => pin !== null && pin.board !== board.name);
  if (pinned || piece.parts.some(({ thickness }) => thickness > board.dressedThickness)) return null;
  if (!piece.parts.every((part) => suits(part, board))) return null;
  const turns = piece.mayTurn ? [piece, { length: piece.width, width: piece.length }] : [piece];
  let best: { readonly where: Rectangle; readonly spare: number } | null = null;
  for (const face of ['A', 'B'] as const) {
    if (piece.parts.some(({ pin }) => pin !== null && pin.face !== null && pin.face !== face)) continue;
    const blocked = board.defects
      .filter((defect) => piece.parts.some((part) => blocks(part, defect, face)))
      .map((defect) => extent(defect, shop));
    for (const { length, width } of turns) {
      const holds = (area: Rectangle): boolean => area.length >= length && area.width >= width;
      for (const area of clearAreas(usable(board, shop), [...blocked, ...taken], holds)) {
        // The narrowest strip that will do, and in it the shortest.
        const spare = (area.width - width) * board.length + (area.length - length);
        if (best === null || spare < best.spare)
          best = { where: { x: area.x, y: area.y, length, width }, spare };
      }
    }
  }
  return best === null ? null : { board, taken: [...taken, withKerf(best.where, shop)] };
}

function withKerf({ x, y, length, width }: Rectangle, shop: Shop): Rectangle {
  return {
    x: x - shop.crosscutKerf,
    y: y - shop.ripKerf,
    length: length + 2 * shop.crosscutKerf,
    width: width + 2 * shop.ripKerf,
  };
}

/** A cut list being ticked off: pieces still to be found, and boards in mind. */
export interface HandPlan {
  readonly left: readonly Wanted[];
  readonly boards: readonly EyedBoard[];
}

/** Puts as much of the list as possible on a board, in the list's order. */
export function fillBoard(
  board: EyedBoard,
  list: readonly Wanted[],
  shop: Shop,
): { board: EyedBoard; left: Wanted[] } {
  let filled = board;
  const left: Wanted[] = [];
  for (const piece of list) {
    const with_ = seenOn(filled, piece, shop);
    if (with_ === null) left.push(piece);
    else filled = with_;
  }
  return { board: filled, left };
}

/** Every copy of a job's boards as one board each. */
export function copiesOf(job: Pick<Job, 'boards'>): Board[] {
  return job.boards.flatMap((board) =>
    Array.from({ length: board.quantity }, () => ({ ...board, quantity: 1 })),
  );
}
