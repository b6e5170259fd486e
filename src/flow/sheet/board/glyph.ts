import { unreachable } from '../../../base/result/unreachable.ts';
import { type Markup, svg } from '../../../base/markup/element.ts';

/**
 * Small signs drawn beside words. Face signs are triangles, as makers mark faces in pencil: solid and pointing
 * up where the show face is the one drawn (A), hollow and pointing down where it lies underneath (B). A tag with
 * a hole for an offcut to keep. A double arrow for the way of the grain.
 */
export type Glyph = 'face up' | 'face down' | 'tag' | 'both ways';

/** Room a glyph takes at a type size. */
export function glyphWidth(glyph: Glyph, size: number): number {
  const wide = glyph === 'both ways' || glyph === 'tag';
  return Math.round(size * (wide ? 1.1 : 0.75));
}

/** The glyph with its left end at x, standing on the baseline y of text of that size. */
export function glyphMark(glyph: Glyph, x: number, y: number, size: number): Markup {
  const w = glyphWidth(glyph, size);
  const h = Math.round(size * 0.68);
  const half = Math.round(w / 2);
  const mid = y - Math.round(h / 2);
  const tip = Math.round(size * 0.26);
  const pen = { fill: 'none', stroke: '#000', 'stroke-width': 3, 'stroke-linejoin': 'round' } as const;
  switch (glyph) {
    case 'face up':
      return svg('path', { d: `M${x} ${y}h${w}l${half - w} ${-h}z`, fill: '#000' });
    case 'face down':
      return svg('path', {
        d: `M${x + 2} ${y - h + 2}h${w - 4}l${half - w + 2} ${h - 4}z`,
        ...pen,
        fill: '#fff',
      });
    case 'tag': {
      const hole = `M${x + tip} ${mid - 2}a2 2 0 1 0 1 0z`;
      return svg('path', {
        d: `M${x} ${mid}l${tip} ${mid - y}H${x + w - 2}V${y}H${x + tip}z${hole}`,
        ...pen,
      });
    }
    case 'both ways':
      return svg('path', {
        d: `M${x + 2} ${mid}h${w - 4}m${-tip} ${-tip}l${tip} ${tip}l${-tip} ${tip}M${x + 2 + tip} ${mid - tip}l${-tip} ${tip}l${tip} ${tip}`,
        ...pen,
      });
    default:
      return unreachable(glyph);
  }
}
