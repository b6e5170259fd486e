import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Shop } from '../shop/shop.ts';
import type { Board } from '../stock/board.ts';
import { usable } from '../stock/usable.ts';
import { slice } from './cut-positions.ts';
import type { UnnumberedCut } from './cut-order.ts';
import type { CutKind } from './stage.ts';

/** The cuts that bring a board down to its usable rectangle, and that rectangle. */
export interface Trims {
  readonly cuts: readonly UnnumberedCut[];
  readonly usable: Rectangle;
}

/**
 * Ends first, near one before far one, then rough edges likewise; the kerf lies inside the trimmed-off strip, on the
 * side of the wood that stays. Where the ends' loss would leave the board too short to rip, its edges go first.
 */
export function trims(board: Board, shop: Shop): Trims {
  const inner = usable(board, shop);
  const whole: Rectangle = { x: 0, y: 0, length: board.length, width: board.width };
  const edgesFirst = inner.length < shop.shortestRip && board.length >= shop.shortestRip;
  const order: readonly CutKind[] = edgesFirst ? ['rip', 'crosscut'] : ['crosscut', 'rip'];
  const cuts: UnnumberedCut[] = [];
  let rest = whole;
  for (const kind of order) {
    const [start, end] = kind === 'crosscut' ? ends(inner, 'x') : ends(inner, 'y');
    const kerf = kind === 'crosscut' ? shop.crosscutKerf : shop.ripKerf;
    const purpose = kind === 'crosscut' ? 'end trim' : 'edge trim';
    const outer = kind === 'crosscut' ? board.length : board.width;
    if (start > 0) {
      cuts.push({ kind, region: rest, at: start - kerf, kerf, purpose });
      rest = slice(kind, rest, start, outer);
    }
    if (end < outer) {
      cuts.push({ kind, region: rest, at: end, kerf, purpose });
      rest = slice(kind, rest, start, end);
    }
  }
  return { cuts, usable: inner };
}

function ends(inner: Rectangle, axis: 'x' | 'y'): readonly [number, number] {
  return axis === 'x' ? [inner.x, inner.x + inner.length] : [inner.y, inner.y + inner.width];
}
