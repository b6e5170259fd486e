import type { LaidBoard, Layout } from '../../src/flow/cuts/layout.ts';

/** A layout of which only the boards matter: no costs, no cuts, no proof. */
export function bareLayout(
  boards: readonly (Pick<LaidBoard, 'board' | 'copy' | 'length' | 'width' | 'offcuts'> &
    Partial<LaidBoard>)[],
): Layout {
  const area = { board: 0, parts: 0, offcuts: 0, kerf: 0, trim: 0, scrap: 0 };
  return {
    format: 'mantelwright layout 1',
    ticksPerInch: 8128,
    kerf: { rip: 0, crosscut: 0 },
    boards: boards.map((board) => ({ pieces: [], cuts: [], area, cost: 0, ...board })),
    short: [],
    totals: {
      boards: boards.length,
      boardFeet: 0,
      boardFeetMeasured: 0,
      cost: 0,
      yield: 0,
      waste: 0,
      setups: 0,
    },
    proof: { value: 0, bound: 0, gap: 0, proven: false },
  };
}
