import type { PieceWords } from '../words/piece-words.ts';
import type { Glyph } from './glyph.ts';
import type { Wording } from './label.ts';
import type { Segment } from './text-line.ts';

/**
 * The ways a piece's label may be set, best first: three lines, two, one; then with the name wrapped onto two
 * or three lines. All say the same; nothing is left out to make room.
 */
export function pieceWordings(words: PieceWords): Wording[] {
  const name: Segment[] = [bold(words.name), ...copyOf(words)];
  const size: Segment[] = [{ text: words.size }];
  const marks: Segment[] = [...faceSegments(words.showFace), ...words.marks.flatMap(plain)];
  const withMarks = marks.length > 0;
  const wrapped = [2, 3]
    .map((lines) => wrap(words.name, lines))
    .filter((lines) => lines.length > 1)
    .flatMap((lines): Wording[] => [
      [...lines.map((line) => [bold(line)]), [...copyOf(words), ...size], ...(withMarks ? [marks] : [])],
      [...lines.map((line) => [bold(line)]), [...copyOf(words), ...size, ...marks]],
    ]);
  const stacked: Wording[] = withMarks ? [[name, size, marks]] : [];
  return [...stacked, [name, [...size, ...marks]], [[...name, ...size, ...marks]], ...wrapped];
}

/** The show-face sign and its letter; nothing where either face will do. */
export function faceSegments(face: PieceWords['showFace']): Segment[] {
  if (face === null) return [];
  const glyph: Glyph = face === 'A' ? 'face up' : 'face down';
  return [{ glyph }, { text: face }];
}

/** What stands in the second part of a piece that is broken between two rows. */
export function continuedWordings(words: PieceWords): Wording[] {
  return [
    [[bold(words.name), ...copyOf(words), { text: '(continued)' }]],
    [[bold(words.name)], [{ text: '(continued)' }]],
  ];
}

/** An offcut to keep: the tag, what to write on it, and its size. */
export function offcutWordings(id: string, size: string): Wording[] {
  const tag: Segment[] = [{ glyph: 'tag' }, { text: id, bold: true }];
  return [
    [[...tag], [{ text: `keep ${size}` }]],
    [[...tag, { text: `keep ${size}` }]],
    [tag, [{ text: 'keep' }], [{ text: size }]],
  ];
}

/** The tag again where an offcut goes on in another row. */
export function continuedOffcut(id: string): Wording[] {
  return [[[{ glyph: 'tag' }, { text: id, bold: true }, { text: '(continued)' }]]];
}

/** In brackets, lest `2 of 4` and the size beside it run together. */
function copyOf(words: PieceWords): Segment[] {
  return words.copy === '' ? [] : [{ text: `(${words.copy})` }];
}

function bold(text: string): Segment {
  return { text, bold: true };
}

function plain(text: string): Segment[] {
  return text === '' ? [] : [{ text }];
}

/** Breaks a name at spaces into at most `lines` lines of like length; fewer when it has too few words. */
export function wrap(name: string, lines: number): string[] {
  const words = name.split(' ');
  const goal = name.length / lines;
  const wrapped: string[] = [];
  let line = '';
  for (const word of words) {
    const longer = line === '' ? word : `${line} ${word}`;
    const isLast = wrapped.length === lines - 1;
    if (line !== '' && !isLast && Math.abs(longer.length - goal) > Math.abs(line.length - goal)) {
      wrapped.push(line);
      line = word;
    } else line = longer;
  }
  return [...wrapped, line];
}
