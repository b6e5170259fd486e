import { type Planted, spoil, somePiece } from './case.ts';

/** Faults of boards and of the short list. */
export const boardFaults: readonly Planted[] = [
  spoil('board used twice', 'board used twice', (draft) => {
    const [board] = draft.boards;
    if (board === undefined) return false;
    draft.boards.push(structuredClone(board));
    return true;
  }),
  spoil('board the job does not have', 'unknown board', (draft) => {
    const [board] = draft.boards;
    if (board !== undefined) board.board = 'constructor';
    return board !== undefined;
  }),
  spoil('board copy past the quantity', 'no such board copy', (draft) => {
    const [board] = draft.boards;
    if (board !== undefined) board.copy = 3;
    return board !== undefined;
  }),
  spoil('board a tick longer', 'wrong outline', (draft) => {
    const [board] = draft.boards;
    if (board !== undefined) board.length += 1;
    return board !== undefined;
  }),
  spoil('short list one copy too few', 'wrong count', (draft, job) => {
    const entry = draft.short.find(({ copies }) => copies > 1);
    if (entry !== undefined) entry.copies -= 1;
    return entry !== undefined && job.shop.goal === 'least cost';
  }),
  spoil('short list one copy too many', 'wrong count', (draft) => {
    const [entry] = draft.short;
    if (entry !== undefined) entry.copies += 1;
    return entry !== undefined;
  }),
  spoil('short list names nothing', 'bad short', (draft) => {
    draft.short.push({ part: 'toString', copies: 1, why: '' });
    return true;
  }),
  spoil('short list says it twice', 'bad short', (draft) => {
    const [entry] = draft.short;
    if (entry !== undefined) draft.short.push({ ...entry });
    return entry !== undefined;
  }),
  spoil('laid out, yet called short', 'wrong count', (draft) => {
    const piece = somePiece(draft);
    if (piece !== null) draft.short.push({ part: piece.part, copies: 1, why: 'no board left' });
    return piece !== null;
  }),
];
