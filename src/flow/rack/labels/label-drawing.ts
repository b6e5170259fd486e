import { type Markup, svg } from '../../../base/markup/element.ts';
import { defectMark } from '../../sheet/board/defect-mark.ts';
import type { RackPiece } from '../piece.ts';

/** The drawing's room, in tenths of a millimetre as printed. */
const room = { width: 840, height: 150 } as const;
/** For the double outline of a defect that goes through. */
const margin = 10;
const leastMark = 10;

/**
 * A piece to scale, face A up, butt end (the heavy line) left, near edge below, with its defects hatched by kind and
 * outlined by face as on the cutting sheet: solid on A, dashed on B, double right through.
 * @returns an SVG element of whole-number coordinates
 */
export function labelDrawing(piece: RackPiece): Markup {
  const scale = Math.min(room.width / piece.length, room.height / piece.width);
  const at = (ticks: number): number => Math.round(ticks * scale);
  const [width, height] = [Math.max(leastMark, at(piece.length)), Math.max(leastMark, at(piece.width))];
  const marks = piece.defects.map(({ kind, face, x, y, length, width: across }) => {
    const box = {
      x: Math.min(at(x), width - leastMark),
      // Drawings count downwards, boards from the near edge up.
      y: Math.max(0, height - at(y + across)),
      w: Math.max(leastMark, at(x + length) - at(x)),
      h: Math.max(leastMark, at(y + across) - at(y)),
    };
    return svg('g', {}, svg('title', {}, `${kind}, face ${face}`), defectMark(kind, face, box));
  });
  const outline = { x: 0, y: 0, width, height, stroke: '#000', 'stroke-width': 3 };
  return svg(
    'svg',
    {
      viewBox: `${-margin} ${-margin} ${room.width + 2 * margin} ${height + 2 * margin}`,
      role: 'img',
      'aria-label': `face A, butt end left, ${piece.defects.length} marked flaws`,
    },
    svg('rect', { ...outline, fill: '#fff' }),
    marks,
    svg('rect', { ...outline, fill: 'none' }),
    svg('path', { d: `M0 0V${height}`, stroke: '#000', 'stroke-width': 12 }),
  );
}
