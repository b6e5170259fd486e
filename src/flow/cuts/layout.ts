import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Face } from '../stock/defect.ts';

/** The answer for programs (DESIGN, section 8), lengths in ticks, areas in square ticks. */
export interface Layout {
  readonly format: 'mantelwright layout 1';
  readonly ticksPerInch: 8128;
  readonly kerf: { readonly rip: number; readonly crosscut: number };
  readonly boards: readonly LaidBoard[];
  readonly short: readonly { readonly part: string; readonly copies: number; readonly why: string }[];
  /** Runs that are laid in stretches, each a run of its own; left out where every run is whole. */
  readonly broken?: readonly BrokenRun[];
  readonly totals: Totals;
  readonly proof: LayoutProof;
}

/** What a bound holds under, where it binds; in the order in which it is said. */
export type ProofCondition =
  'grain unbroken' | 'grain broken as here' | 'one tone' | 'boards chosen for parts' | 'stages';

/**
 * How near the best the layout is. With parts short under `least cost` there is no bound and no gap: then `proven` says that these
 * boards cannot hold all parts, however they are laid out.
 */
export interface LayoutProof {
  readonly value: number;
  readonly bound: number | null;
  readonly gap: number | null;
  readonly proven: boolean;
  /** What was held fixed. Always written; a layout from elsewhere may leave it out. */
  readonly under?: readonly ProofCondition[];
  /** With parts short: one more rough board, clear on one face, with which these boards hold all parts; null: none was found. */
  readonly toAdd?: BoardToAdd | null;
}

/** A board that would do. `least`: no smaller one can. Ticks. */
export interface BoardToAdd {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly least: boolean;
}

/** A run that was broken, and why. */
export interface BrokenRun {
  readonly run: string;
  /** Names of its parts in their order, by stretch. */
  readonly stretches: readonly (readonly string[])[];
  /**
   * `no board`: none has room for it whole; `no layout`: proven, all parts cannot be laid out with it whole; `not found`: no such
   * layout was found; `fewest short`: fewer parts are short so; `money`: it costs less so.
   */
  readonly why: 'no board' | 'no layout' | 'not found' | 'fewest short' | 'money';
  /** What it takes whole of one face, kerfs included; ticks. */
  readonly clear: { readonly length: number; readonly width: number };
  /** A better way to break it with which no layout of all parts was found, though that there is none is not proven. */
  readonly inDoubt: readonly (readonly string[])[] | null;
  /** Broken for money: how much less it costs than in the best way that lays out all parts. */
  readonly saves: number | null;
  /** One more rough board that would do to have it whole, and its cost at the shop's price; null: not known. */
  readonly whole: {
    readonly board: { readonly length: number; readonly width: number };
    readonly cost: number;
  } | null;
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
