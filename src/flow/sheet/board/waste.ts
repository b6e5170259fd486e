import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import type { Cut, LaidBoard } from '../../cuts/layout.ts';
import { cutSides, isTrim, sameRectangle } from '../words/cut-sides.ts';

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
  const [near, far] = cutSides(cut);
  const extent = ({ length, width }: Rectangle): number => (cut.kind === 'crosscut' ? length : width);
  const nearIsThinner = extent(near) <= extent(far);
  return [
    { ...near, trim: isTrim(cut) && nearIsThinner },
    { ...far, trim: isTrim(cut) && !nearIsThinner },
  ].filter((side) => extent(side) > 0);
}
