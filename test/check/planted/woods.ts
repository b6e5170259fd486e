import { type Planted, change, withPart } from './case.ts';

/** Faults of species and tone. */
export const woodFaults: readonly Planted[] = [
  change('a part of another species than it asks for', 'wrong species', ({ job, layout }) => {
    const piece = layout.boards.flatMap(({ pieces }) => pieces)[0];
    return piece === undefined ? null : withPart(job, piece.part, { species: 'sugar maple' });
  }),
  change('a part that asks for one oak, and another was taken', 'wrong species', ({ job, layout }) => {
    const piece = layout.boards.flatMap(({ pieces }) => pieces)[0];
    return piece === undefined ? null : withPart(job, piece.part, { species: 'white oak' });
  }),
  change('two species that show', 'mixed species', ({ job, layout }) => {
    const [first, second] = layout.boards.filter(({ pieces }) => pieces.length > 0);
    if (first === undefined || second === undefined || first.board === second.board) return null;
    const boards = job.boards.map((board) =>
      board.name === second.board ? { ...board, species: 'sugar maple' } : board,
    );
    return { boards, parts: job.parts.map((part) => ({ ...part, show: 1 })) };
  }),
  change('two tones of one species that show', 'mixed tones', ({ job, layout }) => {
    const [first, second] = layout.boards.filter(({ pieces }) => pieces.length > 0);
    if (first === undefined || second === undefined || first.board === second.board) return null;
    const boards = job.boards.map((board) => ({
      ...board,
      tone: board.name === second.board ? 'pale' : 'red',
    }));
    return {
      boards,
      shop: { ...job.shop, showTone: 'one' },
      parts: job.parts.map((part) => ({ ...part, show: 1, species: 'oak' })),
    };
  }),
];
