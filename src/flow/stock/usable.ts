import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Shop } from '../shop/shop.ts';
import type { Board } from './board.ts';

/**
 * The part of a board that is left when ends and rough edges are trimmed, in board coordinates.
 * A trim takes its kerf inside the trimmed-off strip, so a trim thinner than the kerf takes a whole kerf.
 * Rough and S2S boards lose both edges; S3S has its near edge straight and loses the far one; S4S loses none.
 * A piece of the rack has sawn ends and loses nothing there.
 * A board shorter than the shop's shortest rip cannot have a rough edge ripped off: its width comes out 0.
 * Length or width may come out 0 or less: then nothing can be cut from the board.
 */
export function usable(board: Pick<Board, 'length' | 'width' | 'surface' | 'origin'>, shop: Shop): Rectangle {
  const sawnEnds = board.origin === 'rack' || shop.endTrim === 0;
  const end = sawnEnds ? 0 : Math.max(shop.endTrim, shop.crosscutKerf);
  const edge = shop.edgeTrim > 0 ? Math.max(shop.edgeTrim, shop.ripKerf) : 0;
  const near = board.surface === 'rough' || board.surface === 'S2S' ? edge : 0;
  const far = board.surface === 'S4S' ? 0 : edge;
  const length = board.length - 2 * end;
  if (near + far > 0 && board.length < shop.shortestRip) return { x: end, y: near, length, width: 0 };
  return { x: end, y: near, length, width: board.width - near - far };
}

/** The least rough board whose usable part has this size: what `usable` takes off, put on again. Ticks. */
export function roughSize(
  { length, width }: { readonly length: number; readonly width: number },
  { endTrim, edgeTrim, shortestRip, crosscutKerf, ripKerf }: Shop,
): { readonly length: number; readonly width: number } {
  const end = endTrim === 0 ? 0 : Math.max(endTrim, crosscutKerf);
  const edge = edgeTrim > 0 ? Math.max(edgeTrim, ripKerf) : 0;
  return { length: Math.max(length + 2 * end, edge > 0 ? shortestRip : 0), width: width + 2 * edge };
}
