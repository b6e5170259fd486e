import { type Markup, svg } from '../../../base/markup/element.ts';
import { textWidth } from '../../../base/markup/text-width.ts';
import type { Box } from './box.ts';
import { textAt } from './text-line.ts';

/** A number on a cut (`cut`) or a letter on a part too small for words (`call-out`). */
export interface Flag {
  readonly kind: 'cut' | 'call-out';
  readonly text: string;
  /** Spoken name and tool tip. */
  readonly title: string;
  readonly box: Box;
  /** Path of the thin line from the flag to what it marks; empty when it sits upon it. */
  readonly leader: string;
}

export const flagHeight = 29;
const flagType = 22;

/** Room that a flag's text needs. */
export function flagWidth(text: string): number {
  return Math.max(flagHeight, textWidth(text, flagType, true) + 13);
}

/** Cut numbers are white in a black block, like a stamp; call-outs black in an outlined lozenge. */
export function flagMark(flag: Flag): Markup {
  const { box, kind, text } = flag;
  const isCut = kind === 'cut';
  const x = box.x + Math.round((box.w - textWidth(text, flagType, true)) / 2);
  return svg(
    'g',
    { 'aria-label': flag.title, fill: isCut ? '#fff' : '#000' },
    svg('title', {}, flag.title),
    svg('rect', {
      x: box.x,
      y: box.y,
      width: box.w,
      height: box.h,
      rx: isCut ? 4 : Math.round(box.h / 2),
      fill: isCut ? '#000' : '#fff',
      stroke: isCut ? '#fff' : '#000',
      'stroke-width': 3,
    }),
    textAt(x, box.y + 22, flagType, text, true),
  );
}
