import { type Tick, ticks, ticksPerInch, ticksPerMillimetre } from '../base/units/tick.ts';

/** How a board's faces and edges are surfaced; S2S: both faces planed. */
export type Surfacing = 'rough' | 'S2S' | 'S3S' | 'S4S';

/** What a thickness as written means: for the board-foot count, and for what can be made of the board. */
export interface Thickness {
  /** For board feet: 1 for 4/4 and thinner. */
  readonly nominalInches: number;
  /** What is left when both faces are dressed. */
  readonly dressed: Tick;
}

/**
 * Rough and S2S thickness in inches: published table (TRADE 2.2; 10/4 from memory). Every row loses 3/16 in through
 * 6/4 and 1/4 in above, and `dressingLoss` says just that; a test compares the two row by row.
 */
export const surfacedThickness: readonly { readonly rough: number; readonly s2s: number }[] = [
  { rough: 3 / 8, s2s: 3 / 16 },
  { rough: 1 / 2, s2s: 5 / 16 },
  { rough: 5 / 8, s2s: 7 / 16 },
  { rough: 3 / 4, s2s: 9 / 16 },
  { rough: 1, s2s: 13 / 16 },
  { rough: 1.25, s2s: 1 + 1 / 16 },
  { rough: 1.5, s2s: 1 + 5 / 16 },
  { rough: 1.75, s2s: 1.5 },
  { rough: 2, s2s: 1.75 },
  { rough: 2.5, s2s: 2.25 },
  { rough: 3, s2s: 2.75 },
  { rough: 3.5, s2s: 3.25 },
  { rough: 4, s2s: 3.75 },
];

/** What planing both faces takes off a rough board, ticks: 3/16 in through 1 1/2 in rough, 1/4 in above. */
export function dressingLoss(rough: Tick): Tick {
  return ticks(rough <= 1.5 * ticksPerInch ? (ticksPerInch * 3) / 16 : ticksPerInch / 4);
}

/**
 * Reads a board's thickness.
 * - Quarters (`4/4`, `5/4` …: a denominator of 4 and a numerator of 4 or more) are nominal, whatever the surface: they
 *   dress to the S2S column of the published table.
 * - Any other size (`13/16`, `1 1/2"`, `20 mm`, `0.75`) is measured. On a surfaced board it is the real thickness, and
 *   the board is counted at the thinnest standard rough size that dresses to it. On a rough board it is the rough
 *   thickness, counted as it is; dressing then takes what the table takes (`dressingLoss`), never leaving less than 0.
 * @param units unit of a bare decimal or whole number; a bare fraction (`13/16`) is always inches, since nobody writes
 *   millimetres so
 * @returns null when the text is no thickness, or zero
 */
export function parseThickness(
  text: string,
  surface: Surfacing,
  units: 'in' | 'mm' = 'in',
): Thickness | null {
  const quarters = /^\s*(\d{1,2})\s*\/\s*4\s*$/.exec(text);
  const count = quarters === null ? 0 : Number(quarters[1]);
  if (count >= 4) {
    const rough = ticks((count * ticksPerInch) / 4);
    return { nominalInches: count / 4, dressed: ticks(rough - dressingLoss(rough)) };
  }
  const size = readSize(text, units);
  if (size === null || size <= 0) return null;
  if (surface !== 'rough') return { nominalInches: nominalOfDressed(size), dressed: size };
  return {
    nominalInches: Math.max(1, size / ticksPerInch),
    dressed: ticks(Math.max(0, size - dressingLoss(size))),
  };
}

/** The thinnest standard rough thickness that dresses to at least this, in inches; at least 1, as board feet count. */
function nominalOfDressed(dressed: Tick): number {
  const row = surfacedThickness.find(({ s2s }) => s2s * ticksPerInch >= dressed);
  return Math.max(1, row === undefined ? (dressed + ticksPerInch / 4) / ticksPerInch : row.rough);
}

/** Rounds down: a board never grows. */
function readSize(text: string, units: 'in' | 'mm'): Tick | null {
  const match =
    /^\s*(?:(\d{1,3}(?:\.\d{1,6})?|\.\d{1,6})|(?:(\d{1,2})(?:\s+|-))?(\d{1,2})\/(\d{1,2}))\s*(in|"|″|mm|cm)?\.?\s*$/.exec(
      text,
    );
  if (match === null) return null;
  const [, decimal, whole, over, under, unit] = match;
  const value = decimal === undefined ? Number(whole ?? 0) + Number(over) / Number(under) : Number(decimal);
  if (!Number.isFinite(value)) return null;
  const metric =
    unit === 'mm' || unit === 'cm' || (unit === undefined && units === 'mm' && decimal !== undefined);
  const perUnit = metric ? ticksPerMillimetre * (unit === 'cm' ? 10 : 1) : ticksPerInch;
  return ticks(Math.floor(value * perUnit + 1e-6));
}
