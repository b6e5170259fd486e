/**
 * Withdrawal of fasteners from side grain, in pounds and inches. L is the thread's penetration into the holding wood (for a
 * nail the whole penetration), D the shank's diameter, G its specific gravity.
 *
 * Two bases that must not be mixed: the handbook's ultimate loads take G at 12 % volume (`Species.gravity`); the design
 * specification's allowable ones take the higher G on ovendry volume (`designGravity`).
 */
export type Fastener = 'wood screw' | 'lag screw' | 'nail';

/**
 * Load at which it pulls out. Source: Wood Handbook, chapter 8: 15,700 G² D L (wood screw), 8,100 G^1.5 D^0.75 L (lag
 * screw), 7,850 G^2.5 D L (bright common nail; its exponent confirmed by the design specification's).
 */
export function ultimateWithdrawal(
  kind: Fastener,
  gravity: number,
  diameter: number,
  length: number,
): number {
  switch (kind) {
    case 'wood screw':
      return 15_700 * gravity ** 2 * diameter * length;
    case 'lag screw':
      return 8_100 * gravity ** 1.5 * diameter ** 0.75 * length;
    case 'nail':
      return 7_850 * gravity ** 2.5 * diameter * length;
  }
}

/**
 * Load allowed by the design specification before its adjustments (a load that stays for good counts × 0.9).
 * Source: National Design Specification for Wood Construction (2018), 12.2-2, 12.2-1 and 12.2-3.
 */
export function allowableWithdrawal(
  kind: Fastener,
  gravity: number,
  diameter: number,
  length: number,
): number {
  switch (kind) {
    case 'wood screw':
      return 2_850 * gravity ** 2 * diameter * length;
    case 'lag screw':
      return 1_800 * gravity ** 1.5 * diameter ** 0.75 * length;
    case 'nail':
      return 1_380 * gravity ** 2.5 * diameter * length;
  }
}

/** Share of a lag screw's withdrawal left in end grain; wood screws and nails must not pull there at all. Source: ibid. */
export const lagInEndGrain = 0.75;

/** Share of the allowable load for a load that stays for good. Source: ibid. */
export const permanentLoad = 0.9;

/**
 * Least penetration, inches: 6 D for wood screws and nails, tip included; 4 D for lag screws, tip excluded.
 * Source: ibid., 12.1.5.6, 12.1.6.4 and 12.1.4.6.
 */
export function leastPenetration(kind: Fastener, diameter: number): number {
  return (kind === 'lag screw' ? 4 : 6) * diameter;
}

/** Specific gravity on ovendry volume of framing lumber. Source: ibid., Table 12.3.3A. */
export const designGravity = {
  'spruce-pine-fir': 0.42,
  'spruce-pine-fir (south)': 0.36,
  'hem-fir': 0.43,
  'Douglas fir-larch': 0.5,
  'southern pine': 0.55,
} as const;

/** Shank diameters of wood screws by number, inches. Source: ibid. */
export const screwDiameter = { 6: 0.138, 8: 0.164, 10: 0.19, 12: 0.216, 14: 0.242 } as const;
