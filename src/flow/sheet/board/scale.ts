import { ticksPerMillimetre } from '../../../base/units/tick.ts';

/** A drawing unit is 0.1 mm of paper, so that whole numbers are fine enough and the scale can be stated. */
const ticksPerUnitAtFullSize = ticksPerMillimetre / 10;

/** The stretch of board drawn in one row of the diagram, ticks from the butt end. */
export interface Reach {
  readonly from: number;
  readonly to: number;
}

/** How a board goes on paper: 1 : `ratio`, broken into as many rows as that takes. */
export interface Scale {
  readonly ratio: number;
  /** Ticks of board to one drawing unit. */
  readonly unit: number;
  readonly reaches: readonly Reach[];
}

export interface ScaleWishes {
  /** Of the board, ticks. */
  readonly length: number;
  readonly width: number;
  /** Smallest extent across the board of anything that carries a label, ticks. */
  readonly narrowest: number;
  /** Where a break between rows would part nothing (crosscuts through the whole width), ticks. */
  readonly goodBreaks: readonly number[];
  /** How many pieces, offcuts and defects a break at x would part. */
  readonly parted: (x: number) => number;
  /** Drawing units that a row has for the board. */
  readonly room: number;
}

const ratios = [4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24, 28, 32, 36, 40];
const mostRows = 8;

/** Heights at which a board and its narrowest strip are comfortable to read: two lines of type, and more. */
const comfortableBoard = 170;
const comfortableStrip = 40;
const rowCost = 0.2;
/** Height for the rows of one diagram (a page less caption, key and legend), and what a row needs besides its board. */
const tallest = 1900;
const rowExtra = 120;

/**
 * The ways one board may be put on paper, best first by size alone: one row where that is legible; a long narrow
 * board is broken into rows and drawn larger, since stretching its width would show shapes that are not there.
 * `worth`: 1 for a board of comfortable height, 1 for a comfortable narrowest strip, less a fifth for each row
 * (found by eye): each row more must buy legibility.
 */
export function scalesFor(wishes: ScaleWishes): { readonly scale: Scale; readonly worth: number }[] {
  const found = Array.from({ length: mostRows }, (_, index) => {
    const rows = index + 1;
    const ratio = ratioFor(wishes, rows);
    const unit = ratio * ticksPerUnitAtFullSize;
    const board = Math.min(1, wishes.width / unit / comfortableBoard);
    const strip = Math.min(1, wishes.narrowest / unit / comfortableStrip);
    return { rows, ratio, unit, worth: board + strip - rowCost * rows };
  });
  // A diagram taller than a page could not be carried to the saw in one piece.
  const fitsOnPage = (rows: number, unit: number): boolean =>
    rows * (wishes.width / unit + rowExtra) <= tallest;
  const isNew = (ratio: number, index: number): boolean =>
    found.findIndex((other) => other.ratio === ratio) === index;
  return found
    .filter(({ ratio, rows, unit }, index) => isNew(ratio, index) && (rows === 1 || fitsOnPage(rows, unit)))
    .sort((a, b) => b.worth - a.worth || a.rows - b.rows)
    .map(({ rows, ratio, unit, worth }) => ({
      scale: { ratio, unit, reaches: chooseBreaks(wishes, rows, wishes.room * unit) },
      worth,
    }));
}

/** The largest scale at which `rows` rows hold the board. */
function ratioFor(wishes: ScaleWishes, rows: number): number {
  const along = wishes.length / (wishes.room * rows);
  const across = wishes.width / (tallest - rowExtra);
  const least = Math.max(along, across) / ticksPerUnitAtFullSize;
  return ratios.find((ratio) => ratio >= least) ?? Math.ceil(least / 10) * 10;
}

/**
 * Where to break: the fewest things parted first, then rows of like length. A shortest path over the
 * candidate positions, row by row: cost[r][i] = least cost of drawing up to candidate i in r rows.
 */
function chooseBreaks(wishes: ScaleWishes, rows: number, capacity: number): Reach[] {
  const even = wishes.length / rows;
  const grid = Array.from({ length: rows * 12 - 1 }, (_, index) => Math.round(((index + 1) * even) / 12));
  const inner = [...wishes.goodBreaks, ...grid].filter((x) => x > 0 && x < wishes.length);
  const stops = [0, ...new Set(inner.sort((a, b) => a - b)), wishes.length];
  let costs: number[] = stops.map((_, index) => (index === 0 ? 0 : Infinity));
  const origins: number[][] = [];
  for (let row = 0; row < rows; row += 1) {
    const reached = stops.map(() => Infinity);
    const origin = stops.map(() => 0);
    stops.forEach((stop, to) => {
      const penalty = stop < wishes.length ? wishes.parted(stop) : 0;
      for (let from = 0; from < to; from += 1) {
        const length = stop - (stops[from] ?? 0);
        // One tick of grace: the grid's positions are rounded.
        if (length > capacity + 1) continue;
        const cost = (costs[from] ?? Infinity) + penalty + (length / even - 1) ** 2;
        if (cost < (reached[to] ?? Infinity)) [reached[to], origin[to]] = [cost, from];
      }
    });
    costs = reached;
    origins.push(origin);
  }
  const reaches: Reach[] = [];
  let end = stops.length - 1;
  for (const origin of origins.reverse()) {
    const start = origin[end] ?? 0;
    reaches.unshift({ from: stops[start] ?? 0, to: stops[end] ?? 0 });
    end = start;
  }
  return reaches;
}
