import type { Tick } from '../../base/units/tick.ts';

/**
 * How a free end of the mantel is closed: by a mitered cap board that returns to the wall, by running square into a
 * side wall, or not at all.
 */
export type EndKind = 'capped' | 'wall' | 'open';

/** The settings of a box mantel: one `mantel.csv`. */
export interface Mantel {
  /** Height of the facing, the board everyone looks at. */
  readonly faceHeight: Tick;
  /** Thickness of every board of the box. */
  readonly thickness: Tick;
  readonly bottom: 'closed' | 'open';
  readonly leftEnd: EndKind;
  readonly rightEnd: EndKind;
  /** What a bevel gauge reads between the wall behind the first leg and the side wall that its end dies into: 90 when square. */
  readonly leftWallAngle: number;
  /** The same behind the last leg. */
  readonly rightWallAngle: number;
  /** How the top and bottom panels of two legs meet at a corner, seen from above. */
  readonly panelJoint: 'butt' | 'miter';
  /**
   * How the long edges of facing, top and bottom meet: the facing's edge covers the panels' (butt), or all are beveled at 45 so
   * that no edge shows (miter).
   */
  readonly faceJoint: 'butt' | 'miter';
  /** From the top of the firebox opening to the lowest part of the mantel; null: not given. */
  readonly heightAboveOpening: Tick | null;
  /** Section of the strip that the mantel hangs on; null: no ledger among the parts. */
  readonly ledger: { readonly thickness: Tick; readonly width: Tick } | null;
  /** A species by name, for weight and movement; empty: not given. */
  readonly species: string;
}

/**
 * One straight run of the mantel along one wall plane: one row of `legs.csv`, the breast walked from left to right as
 * seen from the room. Its figures are of the wall or of the finished mantel, never of the carcass.
 */
export interface Leg {
  readonly name: string;
  /** Length of the wall plane from corner to corner; at a free end to where the finished mantel ends, cap and all. Ticks, > 0. */
  readonly alongWall: Tick;
  /** How far the finished mantel stands off that wall plane, facing and all, ticks, > 0. */
  readonly projection: Tick;
  /** Degrees turned to the next leg (see `turnOf`): 90 round a square outside corner, negative into an inside one. Unread on the last. */
  readonly turn: number;
}
