import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Face } from '../stock/defect.ts';
import type { Proof } from '../choice/choice.ts';

/** The answer for programs (DESIGN, section 8), lengths in ticks, areas in square ticks. */
export interface Layout {
  readonly format: 'mantelwright layout 1';
  readonly ticksPerInch: 8128;
  readonly kerf: { readonly rip: number; readonly crosscut: number };
  readonly boards: readonly LaidBoard[];
  readonly short: readonly { readonly part: string; readonly copies: number; readonly why: string }[];
  readonly totals: Totals;
  readonly proof: Proof;
}

export interface LaidBoard {
  readonly board: string;
  readonly copy: number;
  readonly length: number;
  readonly width: number;
  readonly pieces: readonly LaidPiece[];
  readonly offcuts: readonly Offcut[];
  readonly cuts: readonly Cut[];
  readonly area: Areas;
  readonly cost: number;
}

export interface LaidPiece extends Rectangle {
  readonly part: string;
  readonly copy: number;
  readonly showFace: Face | null;
  readonly strip?: { readonly index: number; readonly of: number };
  readonly run?: { readonly run: number; readonly order: number };
}

/** A leftover long and wide enough to keep. */
export interface Offcut extends Rectangle {
  readonly id: string;
}

/** One pass of the saw through the workpiece `region`; what lies from `at` to `at + kerf` is lost (clipped to the region). */
export interface Cut {
  readonly step: number;
  readonly kind: 'crosscut' | 'rip';
  readonly region: Rectangle;
  readonly at: number;
  readonly kerf: number;
  /** Why it is made; `trim` cuts come first. Always written; a layout from elsewhere may leave it out. */
  readonly purpose?: 'end trim' | 'edge trim' | 'section' | 'strip' | 'piece' | 'rerip' | 'deeper';
}

/** board = parts + offcuts + kerf + trim + scrap, exactly. */
export interface Areas {
  readonly board: number;
  readonly parts: number;
  readonly offcuts: number;
  readonly kerf: number;
  readonly trim: number;
  readonly scrap: number;
}

export interface Totals {
  readonly boards: number;
  /** As the yard tallies them: what is charged for. */
  readonly boardFeet: number;
  /** What the boards really measure. */
  readonly boardFeetMeasured: number;
  readonly cost: number;
  /** parts / board area, 0 to 1 */
  readonly yield: number;
  /** everything that is neither part nor kept offcut, over board area, 0 to 1 */
  readonly waste: number;
  /** distinct fence and stop positions over all boards */
  readonly setups: number;
}
