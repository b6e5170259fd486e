import { type Markup, svg } from '../../../base/markup/element.ts';
import { defectMark } from '../../sheet/board/defect-mark.ts';
import type { RackPiece } from '../piece.ts';

/** The drawing's room, in tenths of a millimetre as printed. */
const room = { width: 840, height: 150 } as const;
/** For the double outline of a defect that goes through. */
const margin = 10;
const leastMark = 10;

/** A long narrow piece is drawn so many times too wide at most: its flaws would be specks otherwise. */
const mostWidening = 4;

/** How a piece is drawn: drawing units per tick along and across. */
export interface LabelScale {
  readonly along: number;
  readonly across: number;
}

/** As large as the room allows; across, where there are flaws to show, up to four times the scale along. */
export function labelScale({ length, width, defects }: RackPiece): LabelScale {
  const along = Math.min(room.width / length, room.height / width);
  const widening = defects.length === 0 ? 1 : mostWidening;
  return { along, across: Math.min(widening * along, room.height / width) };
}

/**
 * A piece, face A up, butt end (the heavy line) left, near edge below, with its defects hatched by kind and
 * outlined by face as on the cutting sheet: solid on A, dashed on B, double right through.
 * @returns an SVG element of whole-number coordinates
 */
export function labelDrawing(piece: RackPiece): Markup {
  const scale = labelScale(piece);
  const along = (ticks: number): number => Math.round(ticks * scale.along);
  const across = (ticks: number): number => Math.round(ticks * scale.across);
  const [width, height] = [
    Math.max(leastMark, along(piece.length)),
    Math.max(leastMark, across(piece.width)),
  ];
  const marks = piece.defects.map(({ kind, face, x, y, length, width: wide }) => {
    const box = {
      x: Math.min(along(x), width - leastMark),
      // Drawings count downwards, boards from the near edge up.
      y: Math.max(0, height - Math.max(leastMark, across(y + wide))),
      w: Math.max(leastMark, along(x + length) - along(x)),
      h: Math.max(leastMark, across(y + wide) - across(y)),
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
