import { seenCharacters, withoutControls } from '../../../base/text/terminal-width.ts';
import { shorten } from '../../../base/markup/shorten.ts';

/** A column of a table for the terminal. */
export interface TextColumn {
  readonly head: string;
  readonly right?: boolean;
  /** Longer cells are cut short. */
  readonly most: number;
}

/** User text for one cell: on one line, harmless to a terminal, cut short. */
export function cellText(text: string, most: number): string {
  return shorten(withoutControls(text.slice(0, 20_000)), most);
}

/** Rows under their heads, columns aligned by what a terminal shows, two spaces apart, no spaces at line ends. */
export function textColumns(columns: readonly TextColumn[], rows: readonly (readonly string[])[]): string[] {
  const cells = [columns.map(({ head }) => head), ...rows].map((row) =>
    row.map((cell, index) => cellText(cell, columns[index]?.most ?? 40)),
  );
  const widths = columns.map((_, index) => Math.max(...cells.map((row) => shownWidth(row[index] ?? ''))));
  return cells.map((row) =>
    row
      .map((cell, index) => {
        const room = ' '.repeat((widths[index] ?? 0) - shownWidth(cell));
        return columns[index]?.right === true ? room + cell : cell + room;
      })
      .join('  ')
      .trimEnd(),
  );
}

function shownWidth(text: string): number {
  return seenCharacters(text).reduce((sum, { columns }) => sum + columns, 0);
}
