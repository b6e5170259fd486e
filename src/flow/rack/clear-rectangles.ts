import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { isUnsound, liesOn, type Defect } from '../stock/defect.ts';
import type { Extent } from './turn.ts';

/**
 * Rectangles of a piece from which clear-1 parts could come: one face free of every defect, the back sound. For each
 * face, every maximal stretch along the piece between defects with every free band across it.
 * @returns rectangles that may overlap, none contained in a larger one of its stretch; at most O(defects³)
 */
export function clearRectangles(
  piece: Extent & { readonly defects: readonly Defect[] },
): readonly Rectangle[] {
  return (['A', 'B'] as const).flatMap((face) => {
    const barring = piece.defects.filter(
      ({ kind, ...defect }) => liesOn({ kind, ...defect }, face) || isUnsound(kind),
    );
    return freeRectangles(piece, barring);
  });
}

function freeRectangles(piece: Extent, barring: readonly Rectangle[]): Rectangle[] {
  const starts = [0, ...barring.map(({ x, length }) => x + length)];
  const ends = [piece.length, ...barring.map(({ x }) => x)];
  const found: Rectangle[] = [];
  for (const from of new Set(starts)) {
    for (const to of new Set(ends)) {
      if (to <= from) continue;
      const within = barring.filter(({ x, length }) => x < to && x + length > from);
      for (const band of freeBands(piece.width, within)) found.push({ x: from, length: to - from, ...band });
    }
  }
  return found;
}

/** What is left across the piece beside the defects. */
function freeBands(width: number, within: readonly Rectangle[]): { y: number; width: number }[] {
  const sorted = [...within].sort((a, b) => a.y - b.y);
  const bands: { y: number; width: number }[] = [];
  let low = 0;
  for (const { y, width: high } of sorted) {
    if (y > low) bands.push({ y: low, width: y - low });
    low = Math.max(low, y + high);
  }
  if (low < width) bands.push({ y: low, width: width - low });
  return bands;
}
