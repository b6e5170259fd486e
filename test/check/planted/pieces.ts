import { ticks } from '../../../src/base/units/tick.ts';
import { type Draft, type Planted, spoil, change, somePiece, editPiece, partOf, withPart } from './case.ts';

/** Faults of single pieces. */
export const pieceFaults: readonly Planted[] = [
  spoil('piece moved one tick along', 'not cut free', (draft) => editPiece(draft, (piece) => (piece.x += 1))),
  spoil('piece moved one tick across', 'not cut free', (draft) =>
    editPiece(draft, (piece) => (piece.y -= 1)),
  ),
  spoil('piece a tick longer', 'wrong size', (draft) => editPiece(draft, (piece) => (piece.length += 1))),
  spoil('piece a tick narrower', 'wrong size', (draft) => editPiece(draft, (piece) => (piece.width -= 1))),
  spoil('piece turned against its grain', 'wrong size', (draft, job) =>
    editPiece(
      draft,
      (piece) => ([piece.length, piece.width] = [piece.width, piece.length]),
      (piece) => partOf(job, piece.part).grain !== 'any' && piece.length !== piece.width,
    ),
  ),
  spoil('piece past the usable area', 'outside the usable area', (draft) =>
    editPiece(draft, (piece, board) => (piece.x = board.length - piece.length + 1)),
  ),
  spoil('piece upon another', 'overlap', (draft) => {
    const board = draft.boards.find(({ pieces }) => pieces.length > 1);
    const [first, second] = board?.pieces ?? [];
    if (first === undefined || second === undefined) return false;
    Object.assign(second, { x: first.x, y: first.y });
    return true;
  }),
  spoil('piece missing', 'wrong count', (draft, job) => {
    const board = draft.boards.find(({ pieces }) => pieces.some((piece) => piece.strip === undefined));
    if (board === undefined || job.shop.goal === 'most value') return false;
    board.pieces = board.pieces.filter((piece) => piece !== board.pieces.find((p) => p.strip === undefined));
    return true;
  }),
  spoil('piece missing, still cut', ['offcut not listed', 'wrong area'], (draft) => {
    const board = draft.boards.find(({ pieces }) => pieces.length > 0);
    return board?.pieces.pop() !== undefined;
  }),
  spoil('piece listed twice', 'copy twice', (draft) =>
    editPiece(
      draft,
      (piece, board) => board.pieces.push({ ...piece }),
      (piece) => piece.strip === undefined,
    ),
  ),
  spoil('copy number past the quantity', 'no such part copy', (draft, job) =>
    editPiece(draft, (piece) => (piece.copy = partOf(job, piece.part).quantity + 1)),
  ),
  spoil('copy number 0', 'no such part copy', (draft) => editPiece(draft, (piece) => (piece.copy = 0))),
  spoil('part the job does not have', 'unknown part', (draft) =>
    editPiece(draft, (piece) => (piece.part = '__proto__')),
  ),
  change('part thicker than the board', 'board too thin', ({ job, layout }) => {
    const piece = somePiece(layout as Draft);
    return piece === null ? null : withPart(job, piece.part, { thickness: ticks(6605) });
  }),
  change('part pinned to another board', 'not on its board', ({ job, layout }) => {
    const piece = somePiece(layout as Draft);
    return piece === null ? null : withPart(job, piece.part, { pin: { board: 'elsewhere', face: null } });
  }),
  change('part pinned to the other face', 'not on its face', ({ job, layout }) => {
    const board = layout.boards.find(({ pieces }) => pieces.some((piece) => piece.showFace === 'A'));
    const piece = board?.pieces.find(({ showFace }) => showFace === 'A');
    if (board === undefined || piece === undefined) return null;
    return withPart(job, piece.part, { pin: { board: board.board, face: 'B' } });
  }),
  change('part pinned to a face, piece says either', 'not on its face', ({ job, layout }) => {
    const board = layout.boards.find(({ pieces }) => pieces.some((piece) => piece.showFace === null));
    const piece = board?.pieces.find(({ showFace }) => showFace === null);
    if (board === undefined || piece === undefined) return null;
    return withPart(job, piece.part, { pin: { board: board.board, face: 'A' } });
  }),
];
