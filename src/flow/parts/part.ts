import type { Tick } from '../../base/units/tick.ts';
import type { DefectKind, Face } from '../stock/defect.ts';
import type { Match } from './match.ts';

export type Quality = 'clear-2' | 'clear-1' | 'sound' | 'any';
export type Grain = 'along' | 'across' | 'any';

/** A kind of defect the maker welcomes on the show face, up to a size (both its length and its width). */
export interface Accepted {
  readonly kind: DefectKind;
  /** null: any size */
  readonly atMost: Tick | null;
}

/** A part to be cut, one row of `parts.csv`. Sizes are finished sizes; lengths are long-point. */
export interface Part {
  readonly name: string;
  /** Copies wanted, ≥ 0. */
  readonly quantity: number;
  readonly length: Tick;
  readonly width: Tick;
  readonly thickness: Tick;
  /** The species it is to be of; empty: any. */
  readonly species: string;
  readonly grain: Grain;
  readonly quality: Quality;
  /** How much it is looked at: 0 hidden, 1 for "yes", more for the face of the mantel. */
  readonly show: number;
  readonly accept: readonly Accepted[];
  /** Parts with the same run name are cut one after another from one strip, in file order; null: free. */
  readonly run: string | null;
  /** Degrees the end is cut off square: 0 square, 45 the miter of a square corner; the sign is ignored for kerf. */
  readonly leftEnd: number;
  readonly rightEnd: number;
  /** Left on the blank beyond the finished size, to be scribed to a wall: none when not given. */
  readonly extraLength?: Tick;
  readonly extraWidth?: Tick;
  /** May be made of up to this many edge-joined strips; 1 means one board only. */
  readonly glueUp: number;
  /** Worth of one copy under the goal `most value`; null: its face area in square inches. */
  readonly value: number | null;
  /** Pinned to a board, or to one face of it. */
  readonly pin: { readonly board: string; readonly face: Face | null } | null;
  /** Set while a layout is sought in one species and tone: only boards of this match may serve the part. */
  readonly match?: Match;
  readonly note: string;
}
