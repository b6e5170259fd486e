import type { LaidPiece, Layout } from '../../cuts/layout.ts';
import { boardTitle, type Named } from './named.ts';

/** Which copies of a part lie on one board, and how. */
export interface PartOnBoard {
  readonly board: string;
  /** `1 to 4`, with `strip 1` where the copy is glued up, and the show face. */
  readonly copies: readonly string[];
}

/** Where each copy of a part lies, board by board, in the layout's order. */
export function placesOf(part: string, layout: Layout, named: Named): PartOnBoard[] {
  return layout.boards.flatMap((laid) => {
    const pieces = laid.pieces.filter((piece) => piece.part === part);
    if (pieces.length === 0) return [];
    return [{ board: boardTitle(laid, named.boards.get(laid.board), 40), copies: copiesOn(pieces) }];
  });
}

function copiesOn(pieces: readonly LaidPiece[]): string[] {
  return [...pieces]
    .sort((a, b) => a.copy - b.copy || (a.strip?.index ?? 0) - (b.strip?.index ?? 0))
    .map(({ copy, strip, showFace }) => {
      const which = strip ? `${copy} (strip ${strip.index + 1} of ${strip.of})` : String(copy);
      return showFace === null ? which : `${which} ${showFace}`;
    });
}

/** How many copies of a part are laid out: a glued-up copy counts once. */
export function laidCopies(part: string, layout: Layout): number {
  const copies = layout.boards.flatMap(({ pieces }) => pieces).filter((piece) => piece.part === part);
  return new Set(copies.map(({ copy }) => copy)).size;
}
