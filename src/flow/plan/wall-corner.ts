import { angleText } from './angle-text.ts';

/** A corner of the masonry as a bevel gauge laid on both walls reads it: above 0, below 180; 90 when square. */
export interface WallCorner {
  readonly degrees: number;
  /** Whether the gauge lies in the corner (an alcove's) and not round it (a breast's). */
  readonly inside: boolean;
}

/**
 * Degrees that the mantel turns at a corner: 180 less what the gauge reads, negative into an inside corner.
 * @example turnOf({ degrees: 92, inside: false }) // 88: a blunt corner turns less than a square one
 */
export function turnOf({ degrees, inside }: WallCorner): number {
  return inside ? degrees - 180 : 180 - degrees;
}

/** The corner of the masonry for people: `92°`, `inside 90°`. */
export function wallCornerText(turn: number): string {
  return `${turn < 0 ? 'inside ' : ''}${angleText(180 - Math.abs(turn))}`;
}

/**
 * Degrees off square at which an end dies into a side wall: above 0 where the wall leans away from the mantel (the gauge reads
 * more than 90), so that the end's long point is on the show face.
 */
export function offSquare(wallAngle: number): number {
  return wallAngle - 90;
}

/** The corner between a leg's wall and the side wall that its end dies into, for people. @param bevel see `offSquare` */
export function sideWallText(bevel: number): string {
  return `inside ${angleText(90 + bevel)}`;
}
