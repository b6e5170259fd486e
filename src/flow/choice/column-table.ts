import type { Column } from './column.ts';
import type { FlatColumns } from './flat-columns.ts';

/** Columns, and the same as flat lists. */
export interface ColumnTable {
  /** In the order of the lists: by group. */
  readonly columns: readonly Column[];
  readonly flat: FlatColumns;
}

/** The table of these columns, whatever their order. */
export function columnTable(given: readonly Column[], groups: number, kinds: number): ColumnTable {
  const columns = [...given].sort((a, b) => a.group - b.group);
  const entries = columns.flatMap((column) =>
    column.kinds.map((kind, i) => [kind, column.counts[i]!] as const),
  );
  const at = new Int32Array(columns.length + 1);
  const first = new Int32Array(groups + 1);
  const holding = Array.from({ length: kinds }, (): number[] => []);
  columns.forEach((column, c) => {
    at[c + 1] = at[c]! + column.kinds.length;
    first[column.group + 1] = c + 1;
    for (const kind of column.kinds) holding[kind]!.push(c);
  });
  for (let g = 0; g < groups; g += 1) first[g + 1] = Math.max(first[g]!, first[g + 1]!);
  return {
    columns,
    flat: {
      group: Int32Array.from(columns, ({ group }) => group),
      cost: Float64Array.from(columns, ({ cost }) => cost),
      at,
      kind: Int32Array.from(entries, ([kind]) => kind),
      count: Int32Array.from(entries, ([, count]) => count),
      first,
      holding: holding.map((list) => Int32Array.from(list)),
    },
  };
}
