import { onRack, type Held, type Rack } from './fold.ts';

/** What is asked of pieces; what is absent is not asked. Sizes in ticks. */
export interface PieceFilter {
  /** As the yard names the thickness: `4/4`. */
  readonly stock?: string;
  /** At least so thick, dressed. */
  readonly thick?: number;
  /** Small and capital letters are one. */
  readonly species?: string;
  readonly long?: number;
  readonly wide?: number;
}

/** The pieces on the rack that meet the filter, longest first; of one length the widest, then by name. */
export function listPieces(rack: Rack, filter: PieceFilter): readonly Held[] {
  const { stock, thick = 0, long = 0, wide = 0 } = filter;
  const species = filter.species?.trim().toLowerCase();
  return onRack(rack)
    .filter(
      ({ piece }) =>
        (stock === undefined || piece.nominalThickness.replace(/\s/g, '') === stock) &&
        (species === undefined || piece.species.trim().toLowerCase() === species) &&
        piece.dressedThickness >= thick &&
        piece.length >= long &&
        piece.width >= wide,
    )
    .sort(
      ({ piece: a }, { piece: b }) =>
        b.length - a.length || b.width - a.width || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0),
    );
}
