import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { bevelKerf } from '../../trade/miter.ts';
import { blankOf } from '../parts/blank.ts';
import { suits } from '../parts/match.ts';
import type { Part } from '../parts/part.ts';
import type { Shop } from '../shop/shop.ts';
import type { Board } from './board.ts';
import { blocks, extent } from './clear.ts';
import type { Face } from './defect.ts';
import { usable } from './usable.ts';

/**
 * The strip that a run is cut from: the parts' blanks one after another, between two of them the kerf of the steeper of
 * the bevels that meet; as wide as the widest. In ticks.
 */
export function runStrip(
  run: readonly Part[],
  shop: Shop,
): { readonly length: number; readonly width: number } {
  return run.reduce(
    (strip, part, index) => {
      const blank = blankOf(part, shop, 1);
      const before = run[index - 1];
      const bevel = Math.max(Math.abs(before?.rightEnd ?? 0), Math.abs(part.leftEnd));
      const kerf = before === undefined ? 0 : bevelKerf(shop.crosscutKerf, bevel);
      return { length: strip.length + kerf + blank.length, width: Math.max(strip.width, blank.width) };
    },
    { length: 0, width: 0 },
  );
}

/** Whether one face of the board has room for the whole run clear of all that its parts must avoid. */
export function holdsRun(run: readonly Part[], board: Board, shop: Shop): boolean {
  return (['A', 'B'] as const).some((face) => faceHoldsRun(run, board, shop, face));
}

/** Whether this face of the board has room for the whole run. */
export function faceHoldsRun(run: readonly Part[], board: Board, shop: Shop, face: Face): boolean {
  if (run.some((part) => part.thickness > board.dressedThickness || !suits(part, board))) return false;
  return hasRoom(runStrip(run, shop), usable(board, shop), flaws(run, board, shop, face));
}

function flaws(run: readonly Part[], board: Board, shop: Shop, show: Face): Rectangle[] {
  return board.defects
    .filter((defect) => run.some((part) => blocks(part, defect, show)))
    .map((defect) => extent(defect, shop));
}

/**
 * Whether a rectangle of this size fits in the area, touching flaws at most. If it fits anywhere it can be pushed down
 * until it meets the area's edge or the top of a flaw, so only those heights are tried: O(flaws²).
 */
function hasRoom(
  size: { readonly length: number; readonly width: number },
  area: Rectangle,
  flaws: readonly Rectangle[],
): boolean {
  const heights = [area.y, ...flaws.map(({ y, width }) => y + width)].filter(
    (y) => y >= area.y && y + size.width <= area.y + area.width,
  );
  return heights.some((low) => {
    const inBand = flaws
      .filter(({ y, width }) => y < low + size.width && y + width > low)
      .sort((a, b) => a.x - b.x);
    let clearFrom = area.x;
    for (const { x, length } of inBand) {
      // A flaw may begin in the end trim: the clear stretch before it ends with the area all the same.
      if (Math.min(x, area.x + area.length) - clearFrom >= size.length) return true;
      clearFrom = Math.max(clearFrom, x + length);
    }
    return area.x + area.length - clearFrom >= size.length;
  });
}
