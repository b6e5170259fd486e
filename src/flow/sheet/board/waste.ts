import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import type { Cut, LaidBoard } from '../../cuts/layout.ts';

/** A leftover that is not kept: from the trims, or scrap. */
export interface Waste extends Rectangle {
  readonly trim: boolean;
}

/**
 * What falls off one board and is thrown away, found by making the cuts one after another: every workpiece left
 * at the end that is neither a piece nor a kept offcut. A trim cut throws away the thinner of its two sides.
 */
export function wasteOf(board: LaidBoard): Waste[] {
  let workpieces: Waste[] = [{ x: 0, y: 0, length: board.length, width: board.width, trim: false }];
  for (const cut of board.cuts) {
    const index = workpieces.findIndex((workpiece) => sameRectangle(workpiece, cut.region));
    if (index < 0) continue;
    workpieces = [...workpieces.slice(0, index), ...halves(cut), ...workpieces.slice(index + 1)];
  }
  const kept = [...board.pieces, ...board.offcuts];
  return workpieces.filter((workpiece) => !kept.some((rectangle) => sameRectangle(rectangle, workpiece)));
}

function halves(cut: Cut): Waste[] {
  const { region, at, kerf, kind } = cut;
  const isCrosscut = kind === 'crosscut';
  const start = isCrosscut ? region.x : region.y;
  const size = isCrosscut ? region.length : region.width;
  const before = at - start;
  const after = start + size - at - kerf;
  const trims = cut.purpose === 'end trim' || cut.purpose === 'edge trim';
  const part = (from: number, extent: number, trim: boolean): Waste =>
    isCrosscut ? { ...region, x: from, length: extent, trim } : { ...region, y: from, width: extent, trim };
  return [
    part(start, before, trims && before <= after),
    part(at + kerf, after, trims && after < before),
  ].filter((side) => side.length > 0 && side.width > 0);
}

function sameRectangle(a: Rectangle, b: Rectangle): boolean {
  return a.x === b.x && a.y === b.y && a.length === b.length && a.width === b.width;
}
