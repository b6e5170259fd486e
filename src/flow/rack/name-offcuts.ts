import type { LaidBoard, Layout, Offcut } from '../cuts/layout.ts';
import { identifier } from './identifier.ts';

/**
 * The layout with a name on each offcut that can be written on the wood and is found on the rack later. A piece's name
 * follows from the job, the board, the corner and the size, so that a layout made again gives the same names.
 * @param job the job as the journal calls it
 * @param used names of the rack's pieces and of the job's boards, none of which is given
 */
export function nameOffcuts(layout: Layout, job: string, used: ReadonlySet<string>): Layout {
  const taken = new Set(used);
  const name = (board: LaidBoard, offcut: Offcut): Offcut => {
    const seed = [job, board.board, board.copy, offcut.x, offcut.y, offcut.length, offcut.width].join('\n');
    const id = identifier(seed, taken);
    taken.add(id);
    return { ...offcut, id };
  };
  const boards = layout.boards.map((board) => ({
    ...board,
    offcuts: board.offcuts.map((offcut) => name(board, offcut)),
  }));
  return { ...layout, boards };
}
