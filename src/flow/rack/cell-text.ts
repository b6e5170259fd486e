/** What a spreadsheet would run as a formula (the wide forms in some locales), or take for its own sign that text follows. */
const formula = /^['=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/;
/** Begins like a number, date or time, and is no plain whole number: `007`, `3/4`, `1E5`, `2-3`. */
const numeral = /^(?!(?:0|[1-9]\d{0,14})$)\d/;

/**
 * Text as it stands in a cell: on one physical line whatever it holds (line ends and backslashes are spelt out), and
 * never a formula (an apostrophe goes in front of what a spreadsheet would run).
 * @example cellText('=1+1') // "'=1+1"
 */
export function cellText(text: string): string {
  const spelt = text.replace(/\\/g, '\\\\').replace(/\n/g, '\\n').replace(/\r/g, '\\r');
  return formula.test(spelt) ? `'${spelt}` : spelt;
}

/**
 * The same for a name, which must come back letter for letter: what a spreadsheet would make a number or a date of
 * gets the apostrophe, too.
 * @example cellName('3/4') // "'3/4"
 */
export function cellName(name: string): string {
  const cell = cellText(name);
  return numeral.test(cell) ? `'${cell}` : cell;
}

/**
 * Reads back what `cellText` and `cellName` wrote, exactly; takes any other text as it is, lone backslashes too.
 * @example textOfCell("'=1+1") // '=1+1'
 */
export function textOfCell(cell: string): string {
  if (!cell.startsWith("'") && !cell.includes('\\')) return cell;
  const bare = cell.slice(1);
  const plain = cell.startsWith("'") && (formula.test(bare) || numeral.test(bare)) ? bare : cell;
  return plain.replace(/\\([\\nr])/g, (_, sign: string) =>
    sign === 'n' ? '\n' : sign === 'r' ? '\r' : '\\',
  );
}
