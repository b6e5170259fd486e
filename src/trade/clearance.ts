/**
 * What the model code asks of combustible mantels and trim round the opening of a masonry fireplace, in inches.
 * Source: International Residential Code 2018, R1001.11 exception 4, quoted in full in a trade magazine: "Exposed
 * combustible mantels or trim is permitted to be placed directly on the masonry fireplace front surrounding the
 * fireplace opening providing such combustible materials are not placed within 6 inches (152 mm) of a fireplace opening.
 * Combustible material within 12 inches (306 mm) of the fireplace opening shall not project more than 1/8 inch (3 mm) for
 * each 1-inch (25 mm) distance from such an opening."
 * A factory-built fireplace, a gas appliance or an insert: the manufacturer's listing governs instead.
 */
export const ircClearance = { none: 6, sliding: 12, projectionPerInch: 1 / 8 } as const;

/**
 * Most that combustible material may project at a distance from the opening, by that rule.
 * @param distance inches from the opening
 * @returns inches; 0 below 6 in, null (no limit from this rule) beyond 12 in
 */
export function mostProjection(distance: number): number | null {
  if (distance < ircClearance.none) return 0;
  if (distance > ircClearance.sliding) return null;
  return distance * ircClearance.projectionPerInch;
}

/** A distance the rule asks for; `beyond`: it must be more than that, not just as much. */
export interface LeastDistance {
  readonly inches: number;
  readonly beyond: boolean;
}

/** The rule turned round: how far from the opening something that projects this much may begin. Inches. */
export function leastDistance(projection: number): LeastDistance {
  const asked = projection / ircClearance.projectionPerInch;
  if (asked > ircClearance.sliding) return { inches: ircClearance.sliding, beyond: true };
  return { inches: Math.max(ircClearance.none, asked), beyond: false };
}

/**
 * NFPA 211 (7-3.3.3 in older editions, 11.2.5.4 in 2016), inches: combustible trim not within 6 in of the opening, top or
 * sides; what projects more than 1 1/2 in not within 12 in of its top (two listed fireplaces' manuals that cite the
 * section). At the sides what projects more than 1 1/2 in keeps its projection as further distance: the paragraph itself
 * from memory, its words in a listed fireplace's manual.
 * @param where above the opening or beside it   @param projection inches
 * @returns least distance from the opening, inches
 */
export function leastDistanceNfpa(where: 'above' | 'beside', projection: number): number {
  if (projection <= 1.5) return 6;
  return where === 'above' ? 12 : 6 + projection;
}
