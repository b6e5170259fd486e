import type { Part } from '../../../src/flow/parts/part.ts';
import type { Layout } from '../../../src/flow/cuts/layout.ts';
import { type Draft, type Planted, change, editPiece, partOf, withDefect } from './case.ts';

/** Defects where none may be. */
export const faceFaults: readonly Planted[] = [
  change('rot under a show face', 'defect', (right) =>
    withDefect(
      right,
      (piece, part) => piece.showFace !== null && part.quality !== 'any',
      (piece) => ({ kind: 'rot', face: piece.showFace ?? 'A' }),
    ),
  ),
  change('stain under the show face of a clear piece', 'defect', (right) =>
    withDefect(
      right,
      (piece, part) =>
        piece.showFace !== null && part.quality.startsWith('clear') && part.accept.length === 0,
      (piece) => ({ kind: 'stain', face: piece.showFace ?? 'A' }),
    ),
  ),
  change('split in the back of a clear-1 piece', 'defect', (right) =>
    withDefect(
      right,
      (piece, part) => piece.showFace !== null && part.quality === 'clear-1',
      (piece) => ({ kind: 'split', face: piece.showFace === 'A' ? 'B' : 'A' }),
    ),
  ),
  change('stain in the back of a clear-2 piece', 'defect', (right) =>
    withDefect(
      right,
      (piece, part) => piece.showFace !== null && part.quality === 'clear-2',
      (piece) => ({ kind: 'stain', face: piece.showFace === 'A' ? 'B' : 'A' }),
    ),
  ),
  change('hole through a sound piece', 'defect', (right) =>
    withDefect(
      right,
      (_, part) => part.quality === 'sound',
      () => ({ kind: 'hole', face: 'through' }),
    ),
  ),
  change('face left open over a stain', 'face left open', (right) =>
    withDefect(
      right,
      (piece, part) => piece.showFace === null && part.quality === 'clear-1' && part.accept.length === 0,
      () => ({ kind: 'stain', face: 'B' }),
    ),
  ),
  {
    name: 'show face flipped onto a stain',
    expected: ['defect'],
    plant: (right) => {
      const clear = (piece: Layout['boards'][number]['pieces'][number], part: Part): boolean =>
        piece.showFace !== null && part.quality === 'clear-1' && part.accept.length === 0;
      const changed = withDefect(right, clear, ({ showFace }) => ({
        kind: 'stain',
        face: showFace === 'A' ? 'B' : 'A',
      }));
      if (changed === null) return null;
      const draft = structuredClone(right.layout) as Draft;
      const isSpoilt = editPiece(
        draft,
        (piece) => (piece.showFace = piece.showFace === 'A' ? 'B' : 'A'),
        (piece) => clear(piece, partOf(right.job, piece.part)),
      );
      return isSpoilt ? { job: { ...right.job, ...changed }, layout: draft as Layout } : null;
    },
  },
];
