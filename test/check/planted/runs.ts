import type { Layout } from '../../../src/flow/cuts/layout.ts';
import { type Draft, type Planted, spoil, change, editPiece, someCut, withPart } from './case.ts';

/** Faults of runs and glue-ups. */
export const runFaults: readonly Planted[] = [
  spoil('two pieces of a run change places', 'bad run', (draft) =>
    editPiece(
      draft,
      (piece, board) => {
        const next = board.pieces.find(
          ({ run }) => run?.run === piece.run?.run && run?.order === (piece.run?.order ?? 0) + 1,
        );
        if (next !== undefined) [piece.run, next.run] = [next.run as never, piece.run as never];
      },
      (piece) => piece.run?.order === 0,
    ),
  ),
  spoil('a piece of a run shows the other face', 'bad run', (draft) =>
    editPiece(
      draft,
      (piece) => (piece.showFace = piece.showFace === 'A' ? 'B' : 'A'),
      (piece) => piece.run?.order === 1,
    ),
  ),
  spoil('a piece left out of its run', 'bad run', (draft) =>
    editPiece(
      draft,
      (piece) => {
        delete piece.run;
      },
      (piece) => piece.run?.order === 1,
    ),
  ),
  spoil('a piece of a run a tick on', 'bad run', (draft) =>
    editPiece(
      draft,
      (piece) => (piece.x += 1),
      (piece) => piece.run?.order === 1,
    ),
  ),
  spoil('a piece of a run beside its strip', 'bad run', (draft) =>
    editPiece(
      draft,
      (piece) => (piece.y += 1),
      (piece) => piece.run?.order === 1,
    ),
  ),
  spoil('a run over two boards', 'bad run', (draft) => {
    const [first, second] = draft.boards;
    const at = first?.pieces.findIndex(({ run }) => run?.order === 1) ?? -1;
    if (first === undefined || second === undefined || at < 0) return false;
    second.pieces.push(...first.pieces.splice(at, 1));
    return true;
  }),
  spoil('a run that is no run of the job', 'bad run', (draft) =>
    editPiece(
      draft,
      (piece) => (piece.run = { run: 999, order: 0 }),
      (piece) => piece.run === undefined,
    ),
  ),
  spoil('a square kerf inside a mitered run', 'wrong kerf', (draft) => {
    const cut = someCut(draft, ({ kind, kerf }) => kind === 'crosscut' && kerf !== draft.kerf.crosscut);
    if (cut === null) return false;
    cut.kerf = draft.kerf.crosscut;
    return true;
  }),
  spoil('a strip on a board of another tone', 'bad glue-up', (draft, job) => {
    const [first, second] = draft.boards;
    const at = first?.pieces.findIndex(({ strip }) => strip !== undefined) ?? -1;
    const tones = [first, second].map((laid) => job.boards.find(({ name }) => name === laid?.board)?.tone);
    if (first === undefined || second === undefined || at < 0 || tones[0] === tones[1]) return false;
    second.pieces.push(...first.pieces.splice(at, 1));
    return true;
  }),
  {
    name: 'a strip on a board of another species',
    expected: ['bad glue-up'],
    plant: ({ job, layout }) => {
      const draft = structuredClone(layout) as Draft;
      const [first, second] = draft.boards;
      const at = first?.pieces.findIndex(({ strip }) => strip !== undefined) ?? -1;
      if (first === undefined || second === undefined || at < 0 || first.board === second.board) return null;
      second.pieces.push(...first.pieces.splice(at, 1));
      const boards = job.boards.map((board) => ({
        ...board,
        tone: '',
        species: board.name === second.board ? 'sugar maple' : board.species,
      }));
      return { job: { ...job, boards }, layout: draft as Layout };
    },
  },
  change('a part that may not be glued up', 'bad glue-up', ({ job, layout }) => {
    const board = layout.boards.find(({ pieces }) => pieces.some(({ strip }) => strip !== undefined));
    const strip = board?.pieces.find((piece) => piece.strip !== undefined);
    if (strip === undefined) return null;
    return withPart(job, strip.part, { glueUp: 1 });
  }),
  spoil('a strip numbered twice', 'bad glue-up', (draft) =>
    editPiece(
      draft,
      (piece) => (piece.strip = { index: 0, of: piece.strip?.of ?? 2 }),
      (piece) => piece.strip?.index === 1,
    ),
  ),
  spoil('strips that disagree', 'bad glue-up', (draft) =>
    editPiece(
      draft,
      (piece) => (piece.strip = { index: 1, of: 9 }),
      (piece) => piece.strip?.index === 1,
    ),
  ),
];
