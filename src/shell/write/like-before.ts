import { type CsvTable, writeCsv } from '../../index.ts';

/**
 * Rows as a file like the one before: its delimiter, line ends and byte-order mark.
 * @param before the text of the file   @param table the same, read
 */
export function likeBefore(
  rows: readonly (readonly string[])[],
  before: string,
  { delimiter }: CsvTable,
): string {
  const lineEnd = /\r\n|\r|\n/.exec(before)?.[0] ?? '\n';
  const mark = before.startsWith('\uFEFF') ? '\uFEFF' : '';
  const cell = (text: string): string => {
    // A decimal comma needs no quotes where commas separate nothing.
    if (text === '' || (delimiter !== ',' && /^\d+,\d+$/.test(text))) return text;
    const written = writeCsv([[text]]).replace(/\n$/, '');
    const needsQuotes = text.includes(delimiter) && !written.startsWith('"');
    return needsQuotes ? `"${written}"` : written;
  };
  return mark + rows.map((row) => row.map(cell).join(delimiter) + lineEnd).join('');
}
