import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Cut } from '../cuts/layout.ts';
import type { Shop } from '../shop/shop.ts';
import type { Board } from '../stock/board.ts';

/** Whether one rectangle lies wholly in another; shared edges allowed. Written apart from the code under check. */
export function isWithin(inner: Rectangle, outer: Rectangle): boolean {
  if (inner.x < outer.x || inner.y < outer.y) return false;
  return inner.length <= outer.x + outer.length - inner.x && inner.width <= outer.y + outer.width - inner.y;
}

/** Square ticks that two rectangles share. */
export function sharedArea(a: Rectangle, b: Rectangle): number {
  const along = Math.min(a.x + a.length, b.x + b.length) - Math.max(a.x, b.x);
  const across = Math.min(a.y + a.width, b.y + b.width) - Math.max(a.y, b.y);
  return along > 0 && across > 0 ? along * across : 0;
}

/** Whether two rectangles are the same, tick for tick. */
export function isSame(a: Rectangle, b: Rectangle): boolean {
  return a.x === b.x && a.y === b.y && a.length === b.length && a.width === b.width;
}

/**
 * The rectangle left of a board by its trims (DESIGN, section 6). A trim loses at least a whole kerf. Ends lose
 * theirs, but not those of rack pieces, which were sawn; of the edges, rough and S2S boards lose both, S3S the far
 * one, S4S none.
 */
export function trimmed(board: Board, shop: Shop): Rectangle {
  const perEnd =
    shop.endTrim === 0 || board.origin === 'rack' ? 0 : Math.max(shop.endTrim, shop.crosscutKerf);
  const perEdge = shop.edgeTrim === 0 ? 0 : Math.max(shop.edgeTrim, shop.ripKerf);
  const roughEdges = { rough: 2, S2S: 2, S3S: 1, S4S: 0 }[board.surface];
  return {
    x: perEnd,
    y: roughEdges === 2 ? perEdge : 0,
    length: board.length - perEnd - perEnd,
    width: board.width - roughEdges * perEdge,
  };
}

/** A trim takes off only what lies outside the usable area. */
export function takesOnlyTrim(
  { kind, at, kerf }: Pick<Cut, 'kind' | 'at' | 'kerf'>,
  usable: Rectangle,
): boolean {
  const [from, to] =
    kind === 'crosscut' ? [usable.x, usable.x + usable.length] : [usable.y, usable.y + usable.width];
  return at + kerf <= from || at >= to;
}
