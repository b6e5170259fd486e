import type { Place } from '../result/result.ts';

/** A file's text (without a byte-order mark) and where each of its lines starts, for turning offsets into places. */
export interface SourceText {
  readonly file: string;
  readonly text: string;
  /** Offsets of the first character of each line; lines end with LF, CRLF or CR. */
  readonly lineStarts: readonly number[];
}

/** Prepares a text for `placeAt`; drops a byte-order mark. O(length). */
export function sourceText(file: string, text: string): SourceText {
  const bare = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const lineStarts = [0];
  for (const lineEnd of bare.matchAll(/\r\n?|\n/g)) lineStarts.push(lineEnd.index + lineEnd[0].length);
  return { file, text: bare, lineStarts };
}

/**
 * The place of the characters from `start` to `end` (offsets, `end` not included): line and column from 1, an emoji
 * counting as one character. Blanks at either end are left out, and so is what runs on into further lines.
 */
export function placeAt(source: SourceText, start: number, end: number): Place {
  const from = start + blanksBefore(source.text.slice(start, end));
  const line = lineAt(source.lineStarts, from);
  const lineStart = source.lineStarts[line - 1] ?? 0;
  const lineText = /^[^\r\n]*/.exec(source.text.slice(lineStart, source.lineStarts[line]))?.[0] ?? '';
  const meant = source.text.slice(from, Math.min(end, lineStart + lineText.length)).trimEnd();
  return {
    file: source.file,
    line,
    column: characters(source.text.slice(lineStart, from)) + 1,
    excerpt: { line: lineText, length: Math.max(1, characters(meant)) },
  };
}

function blanksBefore(text: string): number {
  const rest = text.trimStart();
  return rest === '' ? 0 : text.length - rest.length;
}

/** Characters as an editor counts them: code points, not code units. */
function characters(text: string): number {
  return Array.from(text).length;
}

/** The line that holds the offset, from 1, by halving. */
function lineAt(lineStarts: readonly number[], offset: number): number {
  let low = 0;
  let high = lineStarts.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((lineStarts[middle] ?? Infinity) <= offset) low = middle;
    else high = middle;
  }
  return low + 1;
}
