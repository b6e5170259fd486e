import { type Tick, ticks } from '../base/units/tick.ts';

/** Below this a length that only rounding noise lifts over a whole tick is not lifted (a tick is 3 µm). */
const noise = 1e-6;

/** Rounded up to a whole tick, as parts and kerfs are, but not for the last bits of a sine. */
export function ticksUp(length: number): Tick {
  // Adding 0 turns a -0 into 0, which JSON and Object.is would tell apart.
  return ticks(Math.ceil(length - noise) + 0);
}

/** Radians of an angle in degrees. */
export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/**
 * Saw setting from square for the two meeting ends of a corner turned by `turn` degrees: half of it. (For the inner
 * angle c between the boards it is 90 - c/2: a square corner 45, one of 135 degrees 22.5.)
 * Source: how-to references, TRADE section 5; the second form is plane geometry.
 */
export function sawSetting(turn: number): number {
  return Math.abs(turn) / 2;
}

/**
 * How much longer the long point is than the short point at one mitered end: t × tan(saw setting).
 * At a square corner that is one thickness an end (common practice).
 * @param thickness in any unit   @param setting degrees from square, 0 to below 90
 * @returns in the unit of `thickness`
 */
export function miterGain(thickness: number, setting: number): number {
  return thickness * Math.tan(radians(setting));
}

/**
 * What a bevel cut takes along the face: kerf / cos(bevel), rounded up to a whole tick, since a kerf never shrinks.
 * @param kerf ticks, ≥ 0   @param degrees the blade's tilt from square, sign ignored, below 90
 * @throws RangeError at 90 degrees and more: such a cut never leaves the face
 * Source: plane geometry (TRADE section 5).
 * @example bevelKerf(ticks(1016), 45) // 1437, for 1436.8
 */
export function bevelKerf(kerf: Tick, degrees: number): Tick {
  if (!(Math.abs(degrees) < 90)) throw new RangeError(`no bevel: ${degrees} degrees`);
  return ticksUp(kerf / Math.cos(radians(degrees)));
}

/**
 * Board width that two strips need when one bevel rip between them serves both, their wide faces on opposite faces of
 * the board: w1 + w2 - t tan(b) + kerf / cos(b). With both wide faces up the wedge is lost: the middle term drops out.
 * Source: plane geometry (TRADE section 5, derived).
 */
export function nestedBevelWidth(
  widths: readonly [number, number],
  thickness: number,
  kerf: number,
  degrees: number,
): number {
  return widths[0] + widths[1] - miterGain(thickness, degrees) + kerf / Math.cos(radians(degrees));
}

/** Tilt that common saws reach, degrees; common practice, no source. A steeper bevel needs the piece on end, in a jig. */
export const steepestCommonTilt = 45;
