/** A character that belongs to the one before it (an accent, a joiner, a skin tone), so no cut may fall before it. */
const clingsToTheLast = /^(?:\p{Mark}|\p{Emoji_Modifier}|\u200D)$/u;

/**
 * Text on one line of at most `most` characters: white space runs become one space, and what is too long ends
 * in an ellipsis. Never cuts between a letter and its accent, nor inside a joined emoji.
 * @example shorten('Front panel of the mantel', 12) // 'Front panel…'
 */
export function shorten(text: string, most: number): string {
  // A long name may have any number of joiners: look no further than could ever matter.
  const line = text
    .slice(0, most * 16 + 64)
    .replace(/\s+/gu, ' ')
    .trim();
  const characters = Array.from(line);
  if (characters.length <= most && text.length <= most * 16 + 64) return line;
  let end = Math.max(1, Math.min(most - 1, characters.length));
  while (end > 1 && (clingsToTheLast.test(characters[end] ?? '') || characters[end - 1] === '\u200D'))
    end -= 1;
  return `${characters.slice(0, end).join('').trimEnd()}…`;
}

const rightToLeft = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]|[\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;

/**
 * Text that keeps its own reading order to itself: text with right-to-left letters is wrapped in a first-strong
 * isolate, so that a number written after it stays after it. Stray isolate signs in any text are taken out.
 */
export function isolate(text: string): string {
  const bare = text.replace(/[\u2066-\u2069]/gu, '');
  return rightToLeft.test(bare) ? `\u2068${bare}\u2069` : bare;
}
