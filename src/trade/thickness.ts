import { plainAscii } from '../base/units/plain-ascii.ts';
import { type LengthReading, readLength } from '../base/units/read-length.ts';
import { type Tick, ticks, ticksPerInch } from '../base/units/tick.ts';

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

/** How a bare number is read: its unit, and whether a comma may be the decimal sign. */
export type ThicknessReading = Pick<LengthReading, 'unit' | 'decimalComma'>;

/** `4/4`, `5/4`, `10/4`. */
const quarters = /^\s*(\d{1,2}) ?\/ ?4\s*$/;
const bareFraction = /^\s*(?:\d+[ -])?\d+ ?\/ ?\d+\s*$/;

/**
 * Reads a board's thickness.
 * - Quarters (`4/4`, `5/4` …: a denominator of 4 and a numerator of 4 or more) are nominal, whatever the surface: they
 *   dress to the S2S column of the published table.
 * - Any other size (`13/16`, `1 1/2"`, `20 mm`, `0.75`) is measured. On a surfaced board it is the real thickness, and
 *   the board is counted at the thinnest standard rough size that dresses to it. On a rough board it is the rough
 *   thickness, counted as it is; dressing then takes what the table takes (`dressingLoss`), never leaving less than 0.
 * A bare fraction is inches even where bare numbers are millimetres: nobody writes millimetres so.
 * @returns null when the text is no thickness, or not above zero
 * @example parseThickness('4/4', 'rough') // { nominalInches: 1, dressed: 13/16 in }
 */
export function parseThickness(
  text: string,
  surface: Surfacing,
  reading: ThicknessReading = { unit: 'in', decimalComma: false },
): Thickness | null {
  const plain = plainAscii(text);
  const count = Number(quarters.exec(plain)?.[1] ?? 0);
  if (count >= 4) {
    const rough = ticks((count * ticksPerInch) / 4);
    return { nominalInches: count / 4, dressed: ticks(rough - dressingLoss(rough)) };
  }
  const unit = bareFraction.test(plain) ? 'in' : reading.unit;
  const size = readLength(text, { unit, decimalComma: reading.decimalComma, round: 'down' });
  if (!size.ok || size.value <= 0) return null;
  if (surface !== 'rough') return { nominalInches: nominalOfDressed(size.value), dressed: size.value };
  return {
    nominalInches: Math.max(1, size.value / ticksPerInch),
    dressed: ticks(Math.max(0, size.value - dressingLoss(size.value))),
  };
}

/** The thinnest standard rough thickness that dresses to at least this, in inches; at least 1, as board feet count. */
function nominalOfDressed(dressed: Tick): number {
  const row = surfacedThickness.find(({ s2s }) => s2s * ticksPerInch >= dressed);
  return Math.max(1, row === undefined ? (dressed + ticksPerInch / 4) / ticksPerInch : row.rough);
}
