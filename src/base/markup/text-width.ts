/**
 * Advance widths of the printable ASCII characters (U+0020 to U+007E) in thousandths of the type size, for
 * the sans-serif face whose widths most systems share. Measured with a free metric-compatible font.
 */
const regularWidths = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278,
  500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469,
  556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500,
  278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
const boldWidths = [
  278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278,
  556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584,
  556, 333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556,
  333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
];

/** The font list that goes with the widths; whatever face a reader has, `textLength` holds text to them. */
export const sansSerif = "Arial, 'Liberation Sans', Arimo, Helvetica, sans-serif";

const takesNoRoom = /^[\p{Mark}\p{Format}]$/u;
const takesAWholeEm =
  /^[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\u3000-\u303F\uFF01-\uFF60]$/u;
const takesMore = /^\p{Extended_Pictographic}$/u;
const latin = /^[\u00A0-\u024F]$/;

/** The usual signs of a drawing, thousandths of the type size. */
const signWidths: ReadonlyMap<string, number> = new Map([
  ['×', 584],
  ['·', 278],
  ['°', 400],
  ['–', 556],
  ['…', 1000],
  ['½', 834],
  ['¼', 834],
  ['¾', 834],
  ['′', 240],
  ['″', 479],
  ['’', 278],
  ['→', 1000],
  ['\uFFFD', 1100],
]);

/** The width where it is known well, else undefined. */
function knownWidth(character: string, widths: readonly number[]): number | undefined {
  return widths[character.charCodeAt(0) - 32] ?? signWidths.get(character);
}

function characterWidth(character: string, widths: readonly number[]): number {
  const known = knownWidth(character, widths);
  if (known !== undefined) return known;
  if (takesNoRoom.test(character)) return 0;
  if (latin.test(character)) return 722;
  if (takesMore.test(character)) return 1400;
  if (takesAWholeEm.test(character)) return 1050;
  return 850;
}

/**
 * How wide a line of text will stand, for a drawing made without a screen: exact for ASCII in the face above, an
 * estimate on the wide side for other scripts. In the unit of `size`, rounded up to a whole number.
 * @example textWidth('60 1/2', 20, false) // 56
 */
export function textWidth(text: string, size: number, bold: boolean): number {
  const widths = bold ? boldWidths : regularWidths;
  let sum = 0;
  for (const character of text) sum += characterWidth(character, widths);
  return Math.ceil((sum * size) / 1000);
}

/**
 * Whether `textWidth` knows the text's width rather than guesses it. Only then is it right to hold the text to that
 * width (`textLength`): a guess would stretch it.
 */
export function isWidthKnown(text: string): boolean {
  for (const character of text) if (knownWidth(character, regularWidths) === undefined) return false;
  return true;
}
