/** Columns as flat lists, by group; of column c the entries at[c] up to at[c + 1] say which kinds it holds and how often. Plain data, for any thread. */
export interface FlatColumns {
  /** Group of each column. */
  readonly group: Int32Array;
  readonly cost: Float64Array;
  readonly at: Int32Array;
  readonly kind: Int32Array;
  readonly count: Int32Array;
  /** Columns of group g: first[g] up to first[g + 1]. */
  readonly first: Int32Array;
  /** By kind, the columns that hold it. */
  readonly holding: readonly Int32Array[];
}
