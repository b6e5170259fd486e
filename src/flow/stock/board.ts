import type { Tick } from '../../base/units/tick.ts';
import type { Defect } from './defect.ts';

export type Surface = 'rough' | 'S2S' | 'S3S' | 'S4S';

/** A board (or a batch of identical ones), one row of `boards.csv`, or an offcut of the rack. */
export interface Board {
  readonly name: string;
  /** Identical copies, ≥ 1. */
  readonly quantity: number;
  /** Rough outline, before any trim. */
  readonly length: Tick;
  readonly width: Tick;
  /** As written in the file: `4/4`, `13/16`, `20 mm`. */
  readonly nominalThickness: string;
  /** Nominal thickness in inches for board feet: 1 for 4/4 and thinner. */
  readonly nominalInches: number;
  /**
   * Board feet that a yard charges for one copy, by the published rule (`yardFeet` of trade/board-feet): money follows it.
   * What a board really measures is `boardFeet` of its outline and nominal thickness.
   */
  readonly yardFeet: number;
  /** What is left when both faces are dressed; a part fits when this is at least its thickness. */
  readonly dressedThickness: Tick;
  readonly surface: Surface;
  readonly species: string;
  readonly grade: string;
  /** Money for one whole copy, > 0 or 0. */
  readonly cost: number;
  /** Set where the file gave no price and the shop's stands in: such a board says nothing of what its grade costs. */
  readonly unpriced?: true;
  /** 0 to 10, how much the maker likes each face. */
  readonly lookA: number;
  readonly lookB: number;
  /** Boards with the same word match in colour; empty: unknown. */
  readonly tone: string;
  readonly note: string;
  readonly defects: readonly Defect[];
  readonly origin: 'job' | 'rack';
}
