import { type Species, allSpecies } from './species.ts';

/** Pounds of water in a cubic foot, as the handbook's density formula has it. */
const waterPoundsPerCubicFoot = 62.4;
const boardFeetPerCubicFoot = 12;

/** Kilograms in a pound, exact by definition. */
export const kilogramsPerPound = 0.45359237;

/**
 * Density of wood: rho = rho_water × G × (1 + MC/100), G taken at the same moisture content.
 * Source: Wood Handbook, FPL-GTR-282 (2021), equation 4-14.
 * @param gravity specific gravity at that moisture content   @param moisture % of ovendry weight
 * @returns pounds per cubic foot
 */
export function poundsPerCubicFoot(
  gravity: number,
  moisture: number,
  water = waterPoundsPerCubicFoot,
): number {
  return water * gravity * (1 + moisture / 100);
}

/** Pounds in one true board foot (144 cubic inches of wood) at 12 % moisture content. */
export function poundsPerBoardFoot(gravity: number): number {
  return poundsPerCubicFoot(gravity, 12) / boardFeetPerCubicFoot;
}

/** Least and most that a board foot may weigh, in pounds, when the wood may be any of these. */
export interface WeightRange {
  readonly least: number;
  readonly most: number;
}

/**
 * Pounds per board foot at 12 % of the species named; when the word means none with a known specific gravity, the
 * range of the whole table, since the wood could be anything in it.
 */
export function weightPerBoardFoot(species: readonly Species[]): WeightRange {
  const known = weights(species);
  const range = known.length > 0 ? known : weights(allSpecies);
  return { least: Math.min(...range), most: Math.max(...range) };
}

function weights(species: readonly Species[]): number[] {
  return species.flatMap(({ gravity }) => (gravity === null ? [] : [poundsPerBoardFoot(gravity)]));
}

/**
 * Specific gravity at x % from the basic one (ovendry weight over green volume), with the species' volumetric shrinkage:
 * G_x = G_b / (1 - S_x/100). Source: Wood Handbook, FPL-GTR-282, equations 4-11 and 4-9.
 */
export function gravityFromShrinkage(basic: number, moisture: number, volumetric: number): number {
  return basic / (1 - (volumetric * (1 - moisture / 30)) / 100);
}

/** The same where the shrinkage is unknown: G_x = G_b / (1 - 0.265 G_b (1 - x/30)). Source: equation 4-13, ibid. */
export function gravityFromBasic(basic: number, moisture: number): number {
  return basic / (1 - 0.265 * basic * (1 - moisture / 30));
}
