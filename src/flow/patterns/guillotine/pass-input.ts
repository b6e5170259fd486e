import type { Lanes } from './lanes.ts';
import type { Net } from './net.ts';

/** What a pass works with; all arrays by kind or by state. */
export interface PassInput {
  readonly net: Net;
  readonly lanes: Lanes;
  readonly worth: Float64Array;
  /** Worth less multiplier, ≥ 0 where a kind counts; kinds with `worth` ≤ 0 are left out. */
  readonly gain: Float64Array;
  readonly caps: Float64Array;
  readonly inside: Float64Array;
  readonly outside: Float64Array;
  /** Sum of multiplier × cap: a set of pieces is worth at most its gain plus this. */
  readonly offset: number;
  /** Only patterns worth at least this are looked for. */
  readonly threshold: number;
  /** At most this many labels a state. */
  readonly keep: number;
  /** Steps after which `keep` falls to 1, to come to an end. */
  readonly work: number;
}
