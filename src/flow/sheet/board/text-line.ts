import { type Markup, svg } from '../../../base/markup/element.ts';
import { shorten } from '../../../base/markup/shorten.ts';
import { isWidthKnown, textWidth } from '../../../base/markup/text-width.ts';
import { type Glyph, glyphMark, glyphWidth } from './glyph.ts';

/** A stretch of a line: words in one weight, or a sign. */
export type Segment = { readonly text: string; readonly bold?: boolean } | { readonly glyph: Glyph };

/** Height of one line of type, with room for the tallest ascent and descent of common faces. */
export function lineHeight(size: number): number {
  return Math.ceil(size * 1.2);
}

const gapPart = 0.3;

function segmentWidth(segment: Segment, size: number): number {
  return 'glyph' in segment
    ? glyphWidth(segment.glyph, size)
    : textWidth(segment.text, size, segment.bold ?? false);
}

/** Width of a line of segments with its gaps, drawing units. */
export function lineWidth(line: readonly Segment[], size: number): number {
  const gaps = Math.max(0, line.length - 1) * Math.round(size * gapPart);
  return line.reduce((sum, segment) => sum + segmentWidth(segment, size), gaps);
}

/**
 * One piece of text held to the width it was given room for (`textLength`), whatever face the reader's system
 * sets it in: what was laid out without overlap stays without overlap. Scripts whose widths are only guessed, on the
 * wide side, stand as they come in the middle of their room.
 * @param x left end   @param y baseline
 */
export function textAt(x: number, y: number, size: number, text: string, bold = false): Markup {
  const width = textWidth(text, size, bold);
  const look = { 'font-size': size, 'font-weight': bold ? 'bold' : null };
  if (text.length < 2) return svg('text', { x, y, ...look }, text);
  if (isWidthKnown(text)) {
    return svg('text', { x, y, ...look, textLength: width, lengthAdjust: 'spacingAndGlyphs' }, text);
  }
  return svg('text', { x: x + Math.round(width / 2), y, ...look, 'text-anchor': 'middle' }, text);
}

/** A line of segments. @param x left end   @param top of the line, not its baseline */
export function lineAt(x: number, top: number, size: number, line: readonly Segment[]): Markup[] {
  const baseline = top + Math.round(size * 0.95);
  let left = x;
  return line.map((segment) => {
    const at = left;
    left += segmentWidth(segment, size) + Math.round(size * gapPart);
    return 'glyph' in segment
      ? glyphMark(segment.glyph, at, baseline, size)
      : textAt(at, baseline, size, segment.text, segment.bold);
  });
}

/** Text cut short, if need be, so that it is at most `room` wide. */
export function fitted(text: string, size: number, bold: boolean, room: number): string {
  let most = Array.from(text).length;
  let short = text;
  while (most > 1 && textWidth(short, size, bold) > room) {
    most = Math.max(1, Math.min(most - 1, Math.floor((most * room) / textWidth(short, size, bold))));
    short = shorten(text, most);
  }
  return short;
}
