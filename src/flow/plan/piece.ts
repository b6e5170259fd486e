import type { Tick } from '../../base/units/tick.ts';
import type { Outline } from './outline.ts';

/** What a piece of the mantel is. */
export type PieceKind = 'facing' | 'cap' | 'top' | 'bottom' | 'ledger';

/** One piece of the mantel. Sizes are finished; length along the grain, from long point to long point. */
export interface PlanPiece {
  readonly name: string;
  readonly kind: PieceKind;
  /** Index of its leg. */
  readonly leg: number;
  readonly length: Tick;
  readonly width: Tick;
  readonly thickness: Tick;
  /**
   * Degrees the end is beveled off square through the thickness, seen with the show face up and read from left to right;
   * positive: the long point is on the show face, negative (inside corners): on the back.
   */
  readonly leftEnd: number;
  readonly rightEnd: number;
  /** Left on the blank where it meets a wall, to be scribed to it, ticks. */
  readonly extraLength: Tick;
  readonly extraWidth: Tick;
  readonly quality: 'clear-1' | 'sound';
  /** 3 the front's facing, 2 other facings and caps, 1 panels, 0 hidden. */
  readonly show: number;
  /** May be edge-joined from up to this many strips. */
  readonly glueUp: number;
  readonly note: string;
  /** Seen from above. */
  readonly outline: Outline;
}
