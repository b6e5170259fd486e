import { shorten } from '../../base/markup/shorten.ts';

const longestCell = 60;

/**
 * Rows as lines with their columns below one another, two spaces apart; the first column and the last to the left, numbers
 * between them to the right. Long cells are shortened, line ends in them become spaces.
 */
export function textTable(rows: readonly (readonly string[])[]): string[] {
  const last = (rows[0]?.length ?? 0) - 1;
  const cells = rows.map((row) =>
    row.map((cell, column) => (column === last ? oneLine(cell) : shorten(cell, longestCell))),
  );
  const widths = (cells[0] ?? []).map((_, column) => Math.max(...cells.map((row) => row[column]!.length)));
  return cells.map((row) =>
    row
      .map((cell, column) => {
        if (column === last) return cell;
        return column === 0 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!);
      })
      .join('  ')
      .trimEnd(),
  );
}

function oneLine(text: string): string {
  return text.replace(/\s+/gu, ' ');
}
