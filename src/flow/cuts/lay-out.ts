import { ticksPerInch } from '../../base/units/tick.ts';
import { boardFeet } from '../../trade/board-feet.ts';
import type { BoardPattern, Choice, PlacedPiece } from '../choice/choice.ts';
import type { Job } from '../stock/job.ts';
import { areasOf } from './areas.ts';
import { type BoardCuts, type OffcutWorth, boardCutter, favouredSettings } from './cut-board.ts';
import { provenBy } from './goal-value.ts';
import type { LaidBoard, LaidPiece, Layout, Totals } from './layout.ts';
import { offcutId } from './offcut-id.ts';
import { countSetups } from './settings.ts';

/**
 * The final layout of a choice: each board's cuts in the order they are made, its offcuts and areas, and the totals.
 * Boards stay in the choice's order. The proof's value is worked anew from what was laid out (offcuts are known only
 * now); its bound is the solver's.
 * @param worth of an offcut: of the cuts that cost the same, those that leave the best offcuts are made
 * @throws Error when a board's pieces cannot be cut within the shop's rules: the choice promised that they can
 */
export function layOut(job: Job, choice: Choice, worth?: OffcutWorth): Layout {
  const favoured = favouredSettings(choice.patterns.flatMap((pattern) => pattern.pieces));
  const taken = new Set<string>();
  const cut = boardCutter(job, favoured, worth);
  const boards = choice.patterns.map((pattern) => {
    const made = cut(pattern);
    if (made === null) throw new Error(`no legal cuts for board ${pattern.board} copy ${pattern.copy}`);
    return laidBoard(job, pattern, made, taken);
  });
  return {
    format: 'mantelwright layout 1',
    ticksPerInch,
    kerf: { rip: job.shop.ripKerf, crosscut: job.shop.crosscutKerf },
    boards,
    short: choice.short.map(({ part, copies, why }) => ({ part: job.parts[part]?.name ?? '', copies, why })),
    totals: totalsOf(job, choice.patterns, boards),
    proof: provenBy(job, boards, choice),
  };
}

function laidBoard(job: Job, pattern: BoardPattern, made: BoardCuts, taken: Set<string>): LaidBoard {
  const { board, usable, cuts } = made;
  const copy = board.quantity > 1 ? pattern.copy : null;
  const pieces = pattern.pieces.map((piece) => laidPiece(job, piece));
  const offcuts = made.offcuts.map((region) => ({ id: offcutId(board.name, copy, taken), ...region }));
  return {
    board: board.name,
    copy: pattern.copy,
    length: board.length,
    width: board.width,
    pieces,
    offcuts,
    cuts,
    area: areasOf({ board, usable, pieces, offcuts, cuts }),
    cost: board.cost,
  };
}

function laidPiece(job: Job, piece: PlacedPiece): LaidPiece {
  const { x, y, length, width, copy, showFace, strip, run } = piece;
  return {
    part: job.parts[piece.part]?.name ?? '',
    copy,
    x,
    y,
    length,
    width,
    showFace,
    ...(strip === undefined ? {} : { strip }),
    ...(run === undefined ? {} : { run }),
  };
}

function totalsOf(job: Job, patterns: readonly BoardPattern[], boards: readonly LaidBoard[]): Totals {
  const sum = (of: (board: LaidBoard) => number): number =>
    boards.reduce((total, board) => total + of(board), 0);
  const area = sum((board) => board.area.board);
  const parts = sum((board) => board.area.parts);
  const offcuts = sum((board) => board.area.offcuts);
  const used = patterns.flatMap((pattern) => job.boards[pattern.board] ?? []);
  return {
    boards: boards.length,
    boardFeet: used.reduce((total, { yardFeet }) => total + yardFeet, 0),
    boardFeetMeasured: used.reduce(
      (total, { length, width, nominalInches }) => total + boardFeet(length, width, nominalInches),
      0,
    ),
    cost: sum((board) => board.cost),
    yield: area === 0 ? 0 : parts / area,
    waste: area === 0 ? 0 : (area - parts - offcuts) / area,
    setups: countSetups(boards),
  };
}
