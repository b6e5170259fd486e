import type { Shop } from '../../shop/shop.ts';
import type { LaidPiece } from '../../cuts/layout.ts';
import { copyText, liesAcross, nameText, type Named, ownSize } from './named.ts';
import { sizeText } from './size-text.ts';

/** What a diagram says of one piece, in the parts a label is put together from. */
export interface PieceWords {
  readonly name: string;
  /** `2 of 4`, or empty. */
  readonly copy: string;
  readonly size: string;
  readonly showFace: LaidPiece['showFace'];
  /** `strip 1 of 2`, `across`, `run face, no. 2`: short words, any number of them. */
  readonly marks: readonly string[];
}

/** The words of one piece. Names are kept to 60 characters. */
export function pieceWords(piece: LaidPiece, named: Named, shop: Shop): PieceWords {
  const part = named.parts.get(piece.part);
  const marks: string[] = [];
  if (liesAcross(piece, part)) marks.push('across');
  if (piece.strip) marks.push(`strip ${piece.strip.index + 1} of ${piece.strip.of}`);
  if (piece.run) marks.push(`run ${nameText(part?.run ?? '', 16)}, no. ${piece.run.order + 1}`);
  return {
    name: nameText(piece.part),
    copy: copyText(piece, part),
    size: sizeText(ownSize(piece, part), shop),
    showFace: piece.showFace,
    marks,
  };
}

/** The same as one line of text, for titles, keys and lists: `Shelf, 2 of 4, 30 × 8, face A shows`. */
export function pieceLine(words: PieceWords, withCopy = true): string {
  const face = words.showFace === null ? [] : [`face ${words.showFace} shows`];
  return [words.name, withCopy ? words.copy : '', words.size, ...face, ...words.marks]
    .filter((word) => word !== '')
    .join(', ');
}
