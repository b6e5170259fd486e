import { type CsvRow, type Defect, type LengthStyle, type Tick, defectKinds, ticks } from '../../index.ts';
import type { BareBoard, BoardList } from './boards.ts';
import { lengthField, neededText, wordField } from './field.ts';
import { type Field, type NamedTable, fieldOf, openTable } from './named-table.ts';
import type { Reading } from './problem.ts';

/** Columns of `defects.csv`, in the order they are written. */
export const defectColumns = [
  { name: 'board', needed: true },
  { name: 'kind', needed: true },
  { name: 'face', needed: true },
  { name: 'from', needed: true },
  { name: 'to', needed: true },
  { name: 'low', needed: true },
  { name: 'high', needed: true },
  { name: 'note' },
] as const;

/**
 * Reads `defects.csv`. Rectangles are rounded outwards: a defect never shrinks.
 * @param lists the files of boards that the defects may lie on (a name may stand in more than one); null when they
 * could not be read, and names and outlines are not looked up
 * @returns the defects of each board, in file order
 */
export function readDefects(
  file: string,
  text: string,
  style: LengthStyle,
  lists: readonly BoardList[] | null,
): Reading<ReadonlyMap<string, readonly Defect[]>> {
  const { named, problems } = openTable(file, text, defectColumns, style.units);
  if (named === null) return { value: new Map(), problems };
  const outlines = new Map<string, BareBoard[]>();
  for (const board of (lists ?? []).flatMap(({ boards }) => boards))
    outlines.set(board.name, [...(outlines.get(board.name) ?? []), board]);
  const known = new Set((lists ?? []).flatMap(({ names }) => names));
  const defects = new Map<string, Defect[]>();
  for (const row of named.table.rows) {
    const label = fieldOf(named, row, 'board');
    const name = neededText(named, label);
    const on = outlines.get(name) ?? [];
    if (name !== '' && lists !== null && !known.has(name))
      named.problems.push({ kind: 'unknown board', at: label.at(), name, by: 'defect', known: [...known] });
    const defect = defectOf(named, row, on, style);
    const before = defects.get(name);
    if (before === undefined) defects.set(name, [defect]);
    else before.push(defect);
  }
  return { value: defects, problems: named.problems, cautions: named.cautions };
}

function defectOf(named: NamedTable, row: CsvRow, boards: readonly BareBoard[], style: LengthStyle): Defect {
  const field = (column: (typeof defectColumns)[number]['name']): Field => fieldOf(named, row, column);
  const kind = wordField(named, field('kind'), defectKinds);
  const face = wordField(named, field('face'), ['A', 'B', 'through']);
  const span = (start: 'from' | 'low', end: 'to' | 'high', along: 'length' | 'width'): [Tick, Tick] => {
    const before = named.problems.length;
    const from = lengthField(named, field(start), { side: 'down' });
    const to = lengthField(named, field(end), { side: 'up' });
    if (named.problems.length > before) return [from, to];
    if (from >= to) {
      const at = field(end).at();
      named.problems.push({
        kind: 'defect without extent',
        at,
        defect: kind,
        along,
        start: from,
        end: to,
        style,
      });
    }
    return boards.reduce<[Tick, Tick]>(
      (within, board) =>
        insideOf(named, board, kind, within, { along, start: field(start), end: field(end) }, style),
      [from, to],
    );
  };
  const [from, to] = span('from', 'to', 'length');
  const [low, high] = span('low', 'high', 'width');
  return { kind, face, x: from, y: low, length: to - from, width: high - low };
}

/**
 * Holds one span of a defect against a board's outline. A defect written as ending where the board ends may pass it by
 * the one tick that rounding the one down and the other up can make; that tick is taken off.
 */
function insideOf(
  named: NamedTable,
  board: BareBoard,
  defect: string,
  [from, to]: [Tick, Tick],
  span: { readonly along: 'length' | 'width'; readonly start: Field; readonly end: Field },
  style: LengthStyle,
): [Tick, Tick] {
  const size = board[span.along];
  const report = (field: Field, end: 'from' | 'to' | 'low' | 'high', value: Tick): void =>
    void named.problems.push({
      kind: 'defect outside',
      at: field.at(),
      defect,
      end,
      value,
      board: board.name,
      size,
      style,
    });
  if (from < 0) report(span.start, span.along === 'length' ? 'from' : 'low', from);
  if (to > size + 1) report(span.end, span.along === 'length' ? 'to' : 'high', to);
  return [from, ticks(Math.min(to, size))];
}
