import type { PlanPiece } from '../piece.ts';
import type { MantelPlan } from '../plan-mantel.ts';

/** A number on the drawing, and the pieces it stands for: a top panel and the bottom panel under it share one. */
export interface PieceKey {
  readonly number: number;
  readonly piece: PlanPiece;
  readonly under: PlanPiece | null;
}

/** Numbers for the pieces in the plan's order. */
export function pieceKeys({ pieces }: MantelPlan): PieceKey[] {
  const bottoms = new Map(pieces.filter(({ kind }) => kind === 'bottom').map((piece) => [piece.leg, piece]));
  return pieces
    .filter(({ kind }) => kind !== 'bottom')
    .map((piece, index) => ({
      number: index + 1,
      piece,
      under: piece.kind === 'top' ? (bottoms.get(piece.leg) ?? null) : null,
    }));
}
