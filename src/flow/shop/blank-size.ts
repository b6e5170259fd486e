import { type Tick, inches, ticks } from '../../base/units/tick.ts';
import type { Shop } from './shop.ts';

/** What jointing its edges takes off each strip of a glue-up: 1/16 in an edge. Common practice, no source. */
export const jointingAllowance = inches(1 / 8);

/** What a blank's size is made of: a finished size, what is left on it, how it is cut at its ends. */
export interface Sized {
  readonly length: Tick;
  readonly width: Tick;
  readonly extraLength?: Tick;
  readonly extraWidth?: Tick;
  readonly leftEnd: number;
  readonly rightEnd: number;
  /** Null for a piece that is cut outside a run. */
  readonly run: string | null;
}

/**
 * The blank to be cut for one piece, grain along `length`: finished size, what is left on it to be fitted, and the shop's
 * allowances; for each end off square the miter allowance, but not in a run, whose pieces lie between exact kerfs.
 * A glue-up of n strips is made longer and wider by the glued allowances, of n equal strips, each wider by the jointing
 * allowance; a share that is not whole is rounded up.
 */
export function blankSize(piece: Sized, shop: Shop, strips: number): { length: Tick; width: Tick } {
  const isGlued = strips > 1;
  const miters = piece.run === null ? [piece.leftEnd, piece.rightEnd].filter((end) => end !== 0).length : 0;
  const length =
    piece.length +
    (piece.extraLength ?? 0) +
    shop.lengthAllowance +
    miters * shop.miterAllowance +
    (isGlued ? shop.gluedLengthAllowance : 0);
  const width =
    piece.width + (piece.extraWidth ?? 0) + shop.widthAllowance + (isGlued ? shop.gluedWidthAllowance : 0);
  return {
    length: ticks(length),
    width: ticks(isGlued ? Math.ceil(width / strips) + jointingAllowance : width),
  };
}
