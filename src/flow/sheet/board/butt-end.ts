import { type Markup, svg } from '../../../base/markup/element.ts';
import { textWidth } from '../../../base/markup/text-width.ts';
import type { Frame } from './frame.ts';
import { textAt } from './text-line.ts';

const type = 20;

/**
 * The board's butt end as it looks end on, with its growth rings, left of the first row: it shows from which end
 * the measures run. Thickness to scale (up to the room there is), words only where the board is wide enough.
 * @param right paper x of its right side
 */
export function buttEnd(frame: Frame, thickness: number, right: number): Markup {
  const h = frame.board.h;
  const w = Math.max(8, Math.min(40, Math.round(thickness / frame.unit)));
  const x = right - w;
  const rings: string[] = [];
  for (let step = 1; step <= 4; step += 1) {
    // Arcs bulging towards face A: chords across the end, equally spaced.
    const inset = Math.round((h * step) / 10);
    const sag = Math.round((w * (5 - step)) / 6);
    if (h - 2 * inset > 8)
      rings.push(`M${x} ${inset}q${2 * sag} ${Math.round(h / 2) - inset} 0 ${h - 2 * inset}`);
  }
  const words = 'butt end';
  const wide = textWidth(words, type, false);
  const label =
    h >= wide
      ? svg(
          'g',
          { transform: `translate(${x - 28} ${Math.round((h + wide) / 2)}) rotate(-90)` },
          textAt(0, 19, type, words),
        )
      : null;
  return svg(
    'g',
    { 'aria-label': 'butt end of the board' },
    svg('rect', { x, y: 0, width: w, height: h, fill: '#fff', stroke: '#000', 'stroke-width': 3 }),
    svg('path', { d: rings.join('') || 'M0 0', fill: 'none', stroke: '#000', 'stroke-width': 2 }),
    label,
  );
}
