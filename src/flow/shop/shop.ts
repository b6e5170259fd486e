import { type Tick, inches, ticks } from '../../base/units/tick.ts';

/** The settings of the saw and the shop: one `shop.csv`. Every one has a default. */
export interface Shop {
  /** Unit of a bare number in the job's files, and of what is printed. */
  readonly units: 'in' | 'mm';
  readonly ripKerf: Tick;
  readonly crosscutKerf: Tick;
  /** Taken off each board end first, kerf included. */
  readonly endTrim: Tick;
  /** Taken off each rough edge first, kerf included. */
  readonly edgeTrim: Tick;
  /** Nothing shorter than this is ripped. */
  readonly shortestRip: Tick;
  /** A piece shorter than this gets a caution. */
  readonly shortestPiece: Tick;
  /** Added to every part's finished length and width to give the blank that is cut. */
  readonly lengthAllowance: Tick;
  readonly widthAllowance: Tick;
  /** What a mantel leaves free along each side of the breast, so that it slips over it. */
  readonly fitGap: Tick;
  /** Left on a planned blank where an end or a back meets a wall, to be scribed to it. */
  readonly scribeAllowance: Tick;
  /** Added to a blank's length for each end off square, when it is cut as a free piece: a run has its exact kerfs. */
  readonly miterAllowance: Tick;
  /** A panel is glued up longer and wider by these, and trimmed after; its joints have their own allowance. */
  readonly gluedLengthAllowance: Tick;
  readonly gluedWidthAllowance: Tick;
  /** For boards without a price of their own. */
  readonly pricePerBoardFoot: number;
  /** 0 to 1: share of its cost by area that a keepable offcut earns back. */
  readonly offcutCredit: number;
  readonly leastOffcutLength: Tick;
  readonly leastOffcutWidth: Tick;
  /** 0 to 1: share of extra cost accepted for a better show face. */
  readonly facePremium: number;
  /** Whether all that shows, and names no species, comes from boards of one species, or from any. */
  readonly showSpecies: 'one' | 'any';
  /** Whether all that shows of one species comes from boards of one tone, or from any. */
  readonly showTone: 'one' | 'any';
  /** From which saving on the grain of a run may be broken for money; null: never. */
  readonly breakGrain: Saving | null;
  /** Whether runs that the plan did not write may be broken, too, where no layout holds them whole. */
  readonly ownRuns: 'whole' | 'may break';
  readonly goal: 'least cost' | 'most value';
  /** How deep crosscuts and rips may nest, the board's first crosscuts being stage 1. */
  readonly stages: number | 'any';
  /** Path of the offcut journal, relative to the job folder; null when the job names none. */
  readonly rack: string | null;
  /** Inches are printed to the nearest 1/printFraction. */
  readonly printFraction: number;
  /** Grain swirls round a knot: every knot is taken as this much larger on each side. */
  readonly knotMargin: Tick;
}

/** A saving of at least so much money, or of at least such a share (0 to 1) of the cost. */
export interface Saving {
  readonly least: number;
  readonly of: 'money' | 'share';
}

/** Defaults for a small shop with a full-kerf blade (1/8 in: TRADE table, kerf). Common practice, no source, for the rest. */
export const defaultShop: Shop = {
  units: 'in',
  ripKerf: inches(1 / 8),
  crosscutKerf: inches(1 / 8),
  endTrim: inches(1),
  edgeTrim: inches(1 / 4),
  shortestRip: inches(12),
  shortestPiece: inches(6),
  lengthAllowance: ticks(0),
  widthAllowance: ticks(0),
  fitGap: inches(1 / 8),
  scribeAllowance: inches(1 / 4),
  miterAllowance: inches(1 / 4),
  gluedLengthAllowance: inches(1 / 2),
  gluedWidthAllowance: inches(1 / 4),
  pricePerBoardFoot: 10,
  offcutCredit: 0,
  leastOffcutLength: inches(12),
  leastOffcutWidth: inches(2),
  facePremium: 0,
  showSpecies: 'one',
  showTone: 'one',
  breakGrain: null,
  ownRuns: 'whole',
  goal: 'least cost',
  stages: 4,
  rack: null,
  printFraction: 32,
  knotMargin: ticks(0),
};
