import { type LengthStyle, formatLength, formatLengthWithUnit } from '../../../base/units/format-length.ts';
import type { Tick } from '../../../base/units/tick.ts';
import { type Markup, svg } from '../../../base/markup/element.ts';
import { sansSerif, textWidth } from '../../../base/markup/text-width.ts';
import type { Spot } from './paper.ts';

/** Type sizes, drawing units (2.6 mm reads well at arm's length). */
export const bodyType = 26;
const headType = 34;

/** How a line of text stands at its spot. */
export interface Lettering {
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly size?: number;
  readonly bold?: boolean;
  /** Degrees clockwise, whole. */
  readonly turned?: number;
}

/** A line of text whose middle height is at the spot, on white ground so that lines beneath do not disturb it. */
export function lettered(text: string, spot: Spot, lettering: Lettering = {}): Markup {
  const { anchor = 'middle', size = bodyType, bold = false, turned = 0 } = lettering;
  const wide = widthOf(text, size, bold);
  const left = anchor === 'start' ? spot.x : anchor === 'end' ? spot.x - wide : spot.x - Math.round(wide / 2);
  const half = Math.round(size * 0.5);
  return svg(
    'g',
    { transform: turned === 0 ? null : `rotate(${turned} ${spot.x} ${spot.y})` },
    svg('rect', { x: left - 6, y: spot.y - half, width: wide + 12, height: 2 * half, fill: '#fff' }),
    svg(
      'text',
      {
        x: spot.x,
        y: spot.y + Math.round(size * 0.35),
        'text-anchor': anchor === 'start' ? null : anchor,
        'font-family': sansSerif,
        'font-size': size,
        'font-weight': bold ? 'bold' : null,
        fill: '#000',
      },
      text,
    ),
  );
}

/** A size on a drawing: inches carry their mark; millimetres stand bare, as drawings have them, and the heading says so. */
export function sizeOnDrawing(length: Tick, style: LengthStyle): string {
  return style.units === 'mm' ? formatLength(length, style) : formatLengthWithUnit(length, style);
}

/** The heading of a drawing, with the unit where sizes do not carry it. */
export function headed(title: string, style: LengthStyle): Markup {
  const text = style.units === 'mm' ? `${title}, sizes in mm` : title;
  return lettered(text, { x: 40, y: 46 }, { anchor: 'start', size: headType, bold: true });
}

/** Width that a line of text takes, drawing units. */
export function widthOf(text: string, size = bodyType, bold = false): number {
  return textWidth(text, size, bold);
}

/** Degrees clockwise on paper that make text follow a line going (dx, dy), readable from below or from the right. */
export function uprightAngle(dx: number, dy: number): number {
  const angle = Math.round((Math.atan2(dy, dx) * 180) / Math.PI);
  if (angle >= 90) return angle - 180;
  return angle < -90 ? angle + 180 : angle;
}

const badgeRadius = 21;

/** A number in a ring: the key of a piece. */
export function badge(number: number, spot: Spot): Markup {
  return svg(
    'g',
    {},
    svg('circle', {
      cx: spot.x,
      cy: spot.y,
      r: badgeRadius,
      fill: '#fff',
      stroke: '#000',
      'stroke-width': 3,
    }),
    svg(
      'text',
      {
        x: spot.x,
        y: spot.y + 9,
        'text-anchor': 'middle',
        'font-family': sansSerif,
        'font-size': 24,
        'font-weight': 'bold',
        fill: '#000',
      },
      number,
    ),
  );
}
