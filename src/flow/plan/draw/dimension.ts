import { type Markup, svg } from '../../../base/markup/element.ts';
import { bodyType, lettered, uprightAngle, widthOf } from './lettering.ts';
import type { Spot } from './paper.ts';

const past = 14;
const slash = 11;
const gapAtObject = 10;

/**
 * A dimension between two spots: extension lines out to the dimension line, a slash where they meet, the size upon it.
 * @param away how far from the spots the dimension line runs, drawing units, to the right of the way from `from` to `to`
 *   as seen on paper (y downward); 0: the line runs between the spots themselves, without extension lines
 */
export function dimension(from: Spot, to: Spot, away: number, text: string): Markup {
  const length = Math.max(1, Math.hypot(to.x - from.x, to.y - from.y));
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const aside = { x: -along.y, y: along.x };
  const shifted = (spot: Spot, by: number): Spot => ({
    x: Math.round(spot.x + aside.x * by),
    y: Math.round(spot.y + aside.y * by),
  });
  const side = Math.sign(away);
  const [a, b] = [shifted(from, away), shifted(to, away)];
  const line = (one: Spot, other: Spot, width: number): Markup =>
    svg('path', { d: `M${one.x} ${one.y}L${other.x} ${other.y}`, 'stroke-width': width });
  const tick = (at: Spot): Markup => {
    const dx = Math.round((along.x + aside.x) * slash);
    const dy = Math.round((along.y + aside.y) * slash);
    return line({ x: at.x - dx, y: at.y - dy }, { x: at.x + dx, y: at.y + dy }, 4);
  };
  const extension = (spot: Spot): Markup =>
    line(shifted(spot, gapAtObject * side), shifted(spot, away + past * side), 2);
  return svg(
    'g',
    { stroke: '#000', fill: 'none' },
    away === 0 ? null : [extension(from), extension(to)],
    line(a, b, 2),
    tick(a),
    tick(b),
    sizeOn(a, b, length, text, side),
  );
}

/** The size on its line, or, where the line is too short for it, beyond its far end. */
function sizeOn(a: Spot, b: Spot, length: number, text: string, side: number): Markup {
  const turned = uprightAngle(b.x - a.x, b.y - a.y);
  const room = widthOf(text) + 24;
  const middle = { x: Math.round((a.x + b.x) / 2), y: Math.round((a.y + b.y) / 2) };
  if (room <= length) return svg('g', { stroke: 'none' }, lettered(text, middle, { turned }));
  const clear = bodyType;
  const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  const way = side === 0 ? 1 : side;
  const spot = {
    x: Math.round(middle.x - along.y * clear * way),
    y: Math.round(middle.y + along.x * clear * way),
  };
  return svg('g', { stroke: 'none' }, lettered(text, spot, { turned }));
}
