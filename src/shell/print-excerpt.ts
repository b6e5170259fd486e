import { type Place, type SeenCharacter, seenCharacters, withoutControls } from '../index.ts';

/** Columns of a terminal that the line may take; a longer line is cut round the place. */
const widest = 96;
/** How much of a cut line is shown before the place. */
const before = 40;
/** Characters looked at on either side of the place: enough for any window, however long the line. */
const reach = 4 * widest;

/**
 * The source line with the meant characters underlined, as two lines; null when the place carries no line.
 * ```
 *   7 | B3,90,6 1/2,knot,84,98
 *     |                     ^^
 * ```
 */
export function printExcerpt(place: Place): string | null {
  if (place.excerpt === undefined) return null;
  const { shown, marked } = cutOut(place.excerpt.line, place.column - 1, place.excerpt.length);
  const number = String(place.line);
  return `  ${number} | ${shown}\n  ${' '.repeat(number.length)} | ${marked}`;
}

/** @param start index of the first meant character, counting code points   @param length at least 1 */
function cutOut(line: string, start: number, length: number): { shown: string; marked: string } {
  const characters = Array.from(line);
  const from = Math.max(0, start - reach);
  const to = Math.min(characters.length, start + reach);
  const near = seenCharacters(withoutControls(characters.slice(from, to).join('')));
  const first = indexAt(near, start - from);
  const end = Math.max(first + 1, indexAt(near, start - from + length));
  const fits = from === 0 && to === characters.length && columnsOf(near) <= widest;
  const left = fits ? 0 : backFrom(near, first, before);
  const right = fits ? near.length : onFrom(near, left, widest);
  const head = left > 0 || from > 0 ? '…' : '';
  const tail = right < near.length || to < characters.length ? '…' : '';
  const pad = ' '.repeat(head.length + columnsOf(near.slice(left, first)));
  const underline = '^'.repeat(Math.max(1, columnsOf(near.slice(first, Math.min(end, right)))));
  const text = near.slice(left, right).map((seen) => seen.text);
  return { shown: `${head}${text.join('')}${tail}`, marked: `${pad}${underline}` };
}

/** The seen character that holds the code point of this index; one past the last for an index past the end. */
function indexAt(seen: readonly SeenCharacter[], codePoint: number): number {
  let counted = 0;
  const index = seen.findIndex(({ text }) => {
    counted += Array.from(text).length;
    return counted > codePoint;
  });
  return index < 0 ? seen.length : index;
}

function columnsOf(seen: readonly SeenCharacter[]): number {
  return seen.reduce((sum, { columns }) => sum + columns, 0);
}

function backFrom(seen: readonly SeenCharacter[], start: number, room: number): number {
  let index = start;
  for (let left = room; index > 0 && left > 0; index -= 1) left -= Math.max(1, seen[index - 1]?.columns ?? 1);
  return index;
}

function onFrom(seen: readonly SeenCharacter[], start: number, room: number): number {
  let index = start;
  for (let left = room; index < seen.length && left > 0; index += 1)
    left -= Math.max(1, seen[index]?.columns ?? 1);
  return index;
}
