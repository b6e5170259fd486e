/**
 * What the prices of one pricing pass say about any set of boards: with y_g copies of each group taken, what stays
 * uncovered (penalties and all that is not the boards' own cost) is at least
 *   least − Σ worth_g · y_g,
 * since no copy of g holds pieces worth more than worth_g at those prices.
 */
export interface BoardCut {
  readonly least: number;
  /** By group, ≥ 0. */
  readonly worth: Float64Array;
  /** The prices themselves, by kind. */
  readonly price: Float64Array;
}

/** Copies of each group beyond which a set of boards is no longer contained in a refuted one. */
export interface Refuted {
  readonly copies: Int32Array;
  /** What the set and every set within it leaves uncovered at least. */
  readonly least: number;
}
