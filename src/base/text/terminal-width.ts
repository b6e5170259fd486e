const takesNoRoom = /^[\p{Mark}\p{Format}]+$/u;
const takesTwo =
  /^(?:[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\u3000-\u303E\uFF01-\uFF60\uFFE0-\uFFE6]|\p{Emoji_Presentation}|\p{Regional_Indicator}|.\uFE0F)/u;

/** What a person sees as one character, and how many columns of a terminal it takes. */
export interface SeenCharacter {
  readonly text: string;
  readonly columns: 0 | 1 | 2;
}

/**
 * A line taken apart into what a person sees as characters (an accent stays with its letter, a joined emoji stays
 * whole), each with its columns on a terminal: 2 for East Asian wide signs and emoji, 0 for a stray accent, else 1.
 * Common practice of terminals, no source; a terminal may differ on rare signs.
 */
export function seenCharacters(line: string): SeenCharacter[] {
  const segments = new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(line);
  return Array.from(segments, ({ segment }) => ({
    text: segment,
    columns: takesNoRoom.test(segment) ? 0 : takesTwo.test(segment) ? 2 : 1,
  }));
}

// Steers a terminal, or turns the reading order of what follows.
const steering = /[\p{Control}\u2028\u2029\u202A-\u202E\u2066-\u2069\uFEFF\p{Surrogate}]/gu;

/**
 * Text that cannot steer a terminal: a tab becomes a blank, every other control sign, turn of the reading order and
 * broken surrogate the replacement sign, one for one, so that columns still count.
 * @example withoutControls('a\u001B[31m') // 'a\uFFFD[31m'
 */
export function withoutControls(text: string): string {
  return text.replace(/\t/g, ' ').replace(steering, '\uFFFD');
}
