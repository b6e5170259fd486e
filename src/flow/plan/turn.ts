import { radians } from '../../trade/miter.ts';

/** Sine and cosine of an angle in degrees, exact at the quarter turns, where walls mostly are. */
export interface Turn {
  readonly sin: number;
  readonly cos: number;
}

const quarters: readonly Turn[] = [
  { sin: 0, cos: 1 },
  { sin: 1, cos: 0 },
  { sin: 0, cos: -1 },
  { sin: -1, cos: 0 },
];

/** @param degrees any size, either sign */
export function turnBy(degrees: number): Turn {
  const quarter = degrees / 90;
  const exact = Number.isInteger(quarter) ? quarters[((quarter % 4) + 4) % 4] : undefined;
  return exact ?? { sin: Math.sin(radians(degrees)), cos: Math.cos(radians(degrees)) };
}
