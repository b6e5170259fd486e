/**
 * Change in width or thickness between two moisture contents within 6 to 14 %: dD = D_I × C × (M_F - M_I).
 * Source: Wood Handbook, FPL-GTR-190 (2010), equation 13-2. It takes the board as perfectly flatsawn or quartersawn, so
 * it tends to say more than a real board moves in width.
 * @param size in any unit   @param coefficient C_T across a flatsawn board, C_R across a quartersawn one
 * @param from, to moisture contents in %
 * @returns in the unit of `size`; negative when drying
 */
export function dimensionChange(size: number, coefficient: number, from: number, to: number): number {
  return size * coefficient * (to - from);
}

/**
 * The same over a wider range, neither moisture content above 30 %: dD = D_I (M_F - M_I) / (30·100/S - 30 + M_I).
 * Source: Wood Handbook, equation 13-3; its algebra from memory, and equal to equation 4-9 applied to the green size.
 * @param shrinkage S in that direction, green to ovendry, %
 */
export function dimensionChangeFromGreen(size: number, shrinkage: number, from: number, to: number): number {
  return (size * (to - from)) / (3000 / shrinkage - 30 + from);
}

/**
 * Change coefficient from shrinkage: C = 1 / (3000/S - 20), that is equation 13-3 at 10 %.
 * 39 of 43 pairs printed in both tables agree to the last digit; the other four are printed with their group.
 */
export function coefficientFromShrinkage(shrinkage: number): number {
  return 1 / (3000 / shrinkage - 20);
}

/** Shrinkage from green to `moisture` %: S_x = S_0 (1 - x/30). Source: Wood Handbook, FPL-GTR-282, equation 4-9. */
export function shrinkageAt(shrinkage: number, moisture: number): number {
  return shrinkage * (1 - moisture / 30);
}

/**
 * Moisture content of interior woodwork over the year in most of the United States, %: pieces range from 6 to 10.
 * Source: Wood Handbook, Table 13-2, from memory.
 */
export const interiorMoisture = { least: 6, average: 8, most: 10 } as const;
