const vulgarFraction = /[\u00BC-\u00BE\u2150-\u215F\u2189]/gu;
const raisedOverLowered = /[\u2070\u00B9\u00B2\u00B3\u2074-\u2079]+[/\u2044\u2215][\u2080-\u2089]+/gu;
const dash = /[-\u2010-\u2013\u2212]/u;

/**
 * The same length in the few signs that the grammar of lengths knows: `63½` and `63¹⁄₂` become `63 1/2`, primes and
 * curly quotes become `'` and `"`, every dash a hyphen, every blank (no-break ones too) one space.
 */
export function plainAscii(text: string): string {
  const spelledOut = (sign: string, at: number, whole: string): string =>
    `${dash.test(whole.charAt(at - 1)) ? '' : ' '}${sign.normalize('NFKC')}`;
  return text
    .replace(vulgarFraction, spelledOut)
    .replace(raisedOverLowered, spelledOut)
    .replace(/[\u2044\u2215]/gu, '/')
    .replace(/[\u2018\u2019\u201B\u2032\u02B9\u00B4`]/gu, "'")
    .replace(/[\u201C\u201D\u201F\u2033\u02BA]|''/gu, '"')
    .replace(new RegExp(dash, 'gu'), '-')
    .replace(/\s+/gu, ' ')
    .trim()
    .toLowerCase();
}
