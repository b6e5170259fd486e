import { stringify } from 'csv-stringify/sync';
import { guardFormula } from './formula-guard.ts';

/**
 * Writes rows (the header first) as CSV for any spreadsheet: commas, LF, quotes where needed, and no cell that a
 * spreadsheet would run as a formula. `readCsv` gives back the same texts, but leaves out rows of blanks alone.
 * @example writeCsv([['part', 'note'], ['Front', '=1+1']]) // "part,note\nFront,'=1+1\n"
 */
export function writeCsv(rows: readonly (readonly string[])[]): string {
  return stringify(
    rows.map((row) => row.map(guardFormula)),
    // Quoted besides what must be: signs that would mislead the search for the delimiter, and a leading mark that
    // would be taken for a byte-order mark.
    { quoted_match: /^\uFEFF|[;\t]/ },
  );
}
