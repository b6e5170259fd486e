import type { Board } from '../../../flow/stock/board.ts';
import type { Job } from '../../../flow/stock/job.ts';
import { usable } from '../../../flow/stock/usable.ts';
import { seenOn } from './by-eye.ts';
import type { Wanted } from './wanted.ts';

/**
 * What is plain without a solver: false when the boards are too small together, or when some piece comes out of none of
 * them alone. True says nothing.
 * @param list the job's cut list (`wantedPieces`)
 */
export function mayComeOut(job: Job, list: readonly Wanted[], boards: readonly Board[]): boolean {
  const wood = boards.reduce((sum, board) => {
    const { length, width } = usable(board, job.shop);
    return sum + board.quantity * Math.max(0, length) * Math.max(0, width);
  }, 0);
  const pieces = list.reduce((sum, { length, width }) => sum + length * width, 0);
  if (wood < pieces) return false;
  // Copies of a part stand next to each other in the list, and are alike.
  const kinds = list.filter((piece, index) => list[index - 1]?.parts !== piece.parts);
  return kinds.every((piece) => boards.some((board) => comesOutOf(board, piece, job)));
}

function comesOutOf(board: Board, piece: Wanted, { shop }: Job): boolean {
  const bare = { board, taken: [] };
  if (seenOn(bare, piece, shop) !== null) return true;
  return piece.strips.some(({ width }) => seenOn(bare, { ...piece, width, mayTurn: false }, shop) !== null);
}
