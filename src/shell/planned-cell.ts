/**
 * The cell `planned` of a row of `parts.csv`: what the plan wrote into the others, so that it can be told later what a
 * person has changed. Read as well as written by people: `length 71 5/8 | width 6 1/2 | right end 45 | show 3`.
 */

/** One cell as the plan wrote it. */
export interface PlannedText {
  readonly column: string;
  readonly text: string;
}

/** The record of some cells; empty ones are left out. A bar of a text itself is doubled. */
export function plannedCell(cells: readonly PlannedText[]): string {
  return cells
    .filter(({ text }) => text !== '')
    .map(({ column, text }) => `${column} ${text.replaceAll('|', '||')}`)
    .join(' | ');
}

/**
 * The cells of such a record.
 * @param columns all that may be in it
 * @returns null when it is no record
 */
export function readPlannedCell(record: string, columns: readonly string[]): readonly PlannedText[] | null {
  const cells: PlannedText[] = [];
  for (const written of record.split(/\s\|\s/)) {
    const said = written.trim();
    const column = columns.find((name) => said.toLowerCase().startsWith(`${name} `));
    if (column === undefined || cells.some((cell) => cell.column === column)) return null;
    cells.push({
      column,
      text: said
        .slice(column.length + 1)
        .trim()
        .replaceAll('||', '|'),
    });
  }
  return cells;
}
