import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Face } from '../stock/defect.ts';

/** One blank laid on a board copy. Its rectangle is the blank (allowances included), in board coordinates. */
export interface PlacedPiece extends Rectangle {
  /** Index into the job's parts. */
  readonly part: number;
  /** 1-based copy of the part; copies run over the whole layout. */
  readonly copy: number;
  /** The face that shows; null where either will do. */
  readonly showFace: Face | null;
  /** Set when the piece is one of several edge-joined strips of its copy. */
  readonly strip?: { readonly index: number; readonly of: number };
  /** Set when the piece is the `order`-th (from 0) of a run cut one after another: `run` numbers the run instance. */
  readonly run?: { readonly run: number; readonly order: number };
}

/** The pieces of one board copy. They can be had by guillotine cuts within the shop's rules. */
export interface BoardPattern {
  /** Index into the job's boards. */
  readonly board: number;
  /** 1-based copy of the board. */
  readonly copy: number;
  readonly pieces: readonly PlacedPiece[];
}

/** A part that could not be laid out in full. */
export interface Short {
  readonly part: number;
  readonly copies: number;
  readonly why: string;
}

/** `value` is what the goal minimises or maximises; `bound` a valid bound on it for every layout. */
export interface Proof {
  readonly value: number;
  readonly bound: number;
  readonly gap: number;
  readonly proven: boolean;
}

/** Which boards, and what on each: the solver's answer before any cut is listed. */
export interface Choice {
  readonly patterns: readonly BoardPattern[];
  readonly short: readonly Short[];
  readonly proof: Proof;
  /** Where parts are short under `least cost`: what a layout of all parts would cost at least, as far as is known; Infinity: there is none. */
  readonly leastWhole?: number;
  /** Set where parts are short under `least cost` and it is proven that no layout of these boards has them all. */
  readonly cannotHold?: true;
}
