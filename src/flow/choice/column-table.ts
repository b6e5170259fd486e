import type { Column } from './column.ts';

/** Columns as flat lists, by group; of column c the entries at[c] up to at[c + 1] say which kinds it holds and how often. */
export interface ColumnTable {
  readonly columns: readonly Column[];
  readonly cost: Float64Array;
  readonly at: Int32Array;
  readonly kind: Int32Array;
  readonly count: Int32Array;
  /** Columns of group g: first[g] up to first[g + 1]. */
  readonly first: Int32Array;
  /** By kind, the columns that hold it. */
  readonly holding: readonly Int32Array[];
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
    cost: Float64Array.from(columns, ({ cost }) => cost),
    at,
    kind: Int32Array.from(entries, ([kind]) => kind),
    count: Int32Array.from(entries, ([, count]) => count),
    first,
    holding: holding.map((list) => Int32Array.from(list)),
  };
}
