/**
 * What no HTML or SVG document may hold, or what turns the reading order of the text round it:
 * control characters other than tab and line end, lone surrogates, noncharacters, and the bidirectional
 * embeddings and overrides (isolates stay: they end with their own text).
 */
const harmful =
  // eslint-disable-next-line no-control-regex
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\u202A-\u202E\uFDD0-\uFDEF\uFFFE\uFFFF]/gu;

/** A surrogate without its partner; under the `u` flag a pair counts as one character and does not match. */
const loneSurrogate = /\p{Surrogate}/gu;

/**
 * Text made harmless for any document: every character above becomes U+FFFD, so that the reader sees that
 * something stood there. Carriage returns become line ends, as a parser would make them.
 * @example clean('a\u0000b') // 'a\uFFFDb'
 */
export function clean(text: string): string {
  return text.replace(/\r\n?/g, '\n').replace(harmful, '\uFFFD').replace(loneSurrogate, '\uFFFD');
}

const entities: ReadonlyMap<string, string> = new Map([
  ['&', '&amp;'],
  ['<', '&lt;'],
  ['>', '&gt;'],
  ['"', '&quot;'],
  ["'", '&#39;'],
]);

/** Most attribute values are numbers, path data and plain words: nothing to do, and worth knowing at once. */
const harmless = /^[\w .,:;#%()+*/-]*$/;

/** Text cleaned and escaped: safe between tags and inside a quoted attribute of HTML, SVG and XML alike. */
export function escapeText(text: string): string {
  if (harmless.test(text)) return text;
  return clean(text).replace(/[&<>"']/g, (character) => entities.get(character) ?? '');
}
