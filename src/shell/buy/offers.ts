import type { Board } from '../../index.ts';

/** What the yard still offers, and what of its list is owned already. */
export interface Offers {
  /** The yard's rows in their order; quantity 0 where all copies were taken before. */
  readonly yard: readonly Board[];
  /** Rows that `boards.csv` lists under the same name and size: taken on an earlier visit. */
  readonly taken: readonly string[];
  /** Rows whose name another board of the job bears: nobody could tell them apart. */
  readonly clashes: readonly string[];
}

/**
 * Sets the yard's list against the boards of the job. Boards taken at the yard keep their names, so a yard row that
 * `boards.csv` lists too is not offered a second time.
 * @param owned the job's boards as its file lists them, used up or not
 */
export function offersOf(yard: readonly Board[], owned: readonly Board[]): Offers {
  const byName = new Map(owned.map((board) => [board.name, board]));
  const taken: string[] = [];
  const clashes: string[] = [];
  const left = yard.map((board) => {
    const own = byName.get(board.name);
    if (own === undefined) return board;
    const same =
      own.length === board.length &&
      own.width === board.width &&
      own.nominalThickness === board.nominalThickness;
    (same ? taken : clashes).push(board.name);
    return { ...board, quantity: same ? Math.max(0, board.quantity - own.quantity) : board.quantity };
  });
  return { yard: left, taken, clashes };
}
