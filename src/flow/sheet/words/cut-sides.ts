import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import type { Cut, LaidBoard, LaidPiece, Offcut } from '../../cuts/layout.ts';

/** What one side of a cut becomes. */
export type Fate =
  | { readonly kind: 'piece'; readonly piece: LaidPiece }
  | { readonly kind: 'offcut'; readonly offcut: Offcut }
  | { readonly kind: 'cut'; readonly step: number }
  | { readonly kind: 'trim' | 'scrap' | 'nothing' };

/** The two sides of a cut: towards butt end or near edge first. Either may be empty where the blade runs off. */
export function cutSides({ kind, region, at, kerf }: Cut): [Rectangle, Rectangle] {
  if (kind === 'crosscut') {
    const end = region.x + region.length;
    return [
      { ...region, length: at - region.x },
      { ...region, x: at + kerf, length: end - at - kerf },
    ];
  }
  const end = region.y + region.width;
  return [
    { ...region, width: at - region.y },
    { ...region, y: at + kerf, width: end - at - kerf },
  ];
}

/** What becomes of a side of a cut: a piece, an offcut to keep, the workpiece of a later cut, or waste. */
export function sideBecomes(board: LaidBoard, cut: Cut, side: Rectangle): Fate {
  if (side.length <= 0 || side.width <= 0) return { kind: 'nothing' };
  const piece = board.pieces.find((candidate) => sameRectangle(candidate, side));
  if (piece) return { kind: 'piece', piece };
  const offcut = board.offcuts.find((candidate) => sameRectangle(candidate, side));
  if (offcut) return { kind: 'offcut', offcut };
  const next = board.cuts.find(({ step, region }) => step > cut.step && sameRectangle(region, side));
  if (next) return { kind: 'cut', step: next.step };
  return { kind: isTrim(cut) ? 'trim' : 'scrap' };
}

/** Whether a cut takes off an end or a rough edge. */
export function isTrim({ purpose }: Cut): boolean {
  return purpose === 'end trim' || purpose === 'edge trim';
}

/** Whether two rectangles are one and the same place. */
export function sameRectangle(a: Rectangle, b: Rectangle): boolean {
  return a.x === b.x && a.y === b.y && a.length === b.length && a.width === b.width;
}
