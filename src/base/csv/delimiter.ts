export type Delimiter = ',' | ';' | '\t';

const candidates: readonly Delimiter[] = [',', ';', '\t'];

/**
 * The sign that separates the cells: of comma, semicolon and tab the one found most often, outside quotes, in the
 * first line that is not blank; a comma where that decides nothing.
 */
export function detectDelimiter(text: string): Delimiter {
  const first = /[^\s][^\r\n]*/.exec(text)?.[0] ?? '';
  const outsideQuotes = first.replace(/"[^"]*"?/g, '');
  const count = (sign: Delimiter): number => outsideQuotes.split(sign).length;
  return candidates.reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}
