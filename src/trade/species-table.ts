/**
 * Where a figure of the table comes from: P printed in the handbook's table and read there or in a copy of it;
 * C from memory, and confirmed by a printed change coefficient; W worked from the shrinkage of the same row by
 * C = 1 / (3000/S - 20); M from memory.
 */
export type Provenance = 'P' | 'C' | 'W' | 'M';

/** One row of the table below, in its order. */
export type SpeciesRow = readonly [
  name: string,
  radial: number,
  tangential: number,
  volumetric: number,
  shrinkageFrom: Provenance,
  radialChange: number,
  tangentialChange: number,
  changeFrom: Provenance,
  gravity: number | null,
  gravityFrom: Provenance | null,
];

/**
 * Shrinkage from green to ovendry, % of the green size; change coefficients per 1 % moisture content, good from 6 to
 * 14 %; specific gravity, ovendry weight over volume at 12 %.
 * Source: USDA Forest Products Laboratory, Wood Handbook: Table 4-3 (shrinkage), Table 13-5 (change coefficients) and
 * Table 5-3 (specific gravity) of FPL-GTR-190 (2010) and FPL-GTR-282 (2021), some of it by way of public
 * copies; each row's letters say which figures are not from there.
 */
export const speciesTable: readonly SpeciesRow[] = [
  ['Alder, red', 4.4, 7.3, 12.6, 'P', 0.00151, 0.00256, 'P', 0.41, 'P'],
  ['Ash, black', 5.0, 7.8, 15.2, 'P', 0.00172, 0.00274, 'P', 0.49, 'P'],
  ['Ash, green', 4.6, 7.1, 12.5, 'P', 0.00169, 0.00274, 'P', 0.56, 'P'],
  ['Ash, white', 4.9, 7.8, 13.3, 'P', 0.00169, 0.00274, 'P', 0.6, 'P'],
  ['Aspen, quaking', 3.5, 6.7, 11.5, 'P', 0.00119, 0.00234, 'P', 0.38, 'P'],
  ['Basswood, American', 6.6, 9.3, 15.8, 'P', 0.0023, 0.0033, 'P', 0.37, 'P'],
  ['Beech, American', 5.5, 11.9, 17.2, 'P', 0.0019, 0.00431, 'P', 0.64, 'P'],
  ['Birch, paper', 6.3, 8.6, 16.2, 'P', 0.00219, 0.00304, 'P', 0.55, 'P'],
  ['Birch, sweet', 6.5, 9.0, 15.6, 'P', 0.00256, 0.00338, 'P', 0.65, 'P'],
  ['Birch, yellow', 7.3, 9.5, 16.8, 'P', 0.00256, 0.00338, 'P', 0.62, 'P'],
  ['Butternut', 3.4, 6.4, 10.6, 'P', 0.00116, 0.00223, 'P', 0.38, 'P'],
  ['Cherry, black', 3.7, 7.1, 11.5, 'P', 0.00126, 0.00248, 'P', 0.5, 'P'],
  ['Chestnut, American', 3.4, 6.7, 11.6, 'P', 0.00116, 0.00234, 'P', 0.43, 'P'],
  ['Cottonwood, eastern', 3.9, 9.2, 13.9, 'P', 0.00133, 0.00327, 'P', 0.4, 'P'],
  ['Elm, American', 4.2, 9.5, 14.6, 'P', 0.00144, 0.00338, 'P', 0.5, 'P'],
  ['Elm, slippery', 4.9, 8.9, 13.8, 'P', 0.00169, 0.00315, 'P', 0.53, 'P'],
  ['Hackberry', 4.8, 8.9, 13.8, 'P', 0.00165, 0.00315, 'P', 0.53, 'P'],
  ['Hickory, pecan', 4.9, 8.9, 13.6, 'P', 0.00169, 0.00315, 'P', 0.66, 'P'],
  ['Hickory, mockernut', 7.7, 11.0, 17.8, 'P', 0.00271, 0.00396, 'W', 0.72, 'P'],
  ['Hickory, pignut', 7.2, 11.5, 17.9, 'P', 0.00252, 0.00415, 'W', 0.75, 'P'],
  ['Hickory, shagbark', 7.0, 10.5, 16.7, 'M', 0.00245, 0.00376, 'W', 0.72, 'P'],
  ['Honeylocust', 4.2, 6.6, 10.8, 'C', 0.00144, 0.0023, 'P', null, null],
  ['Locust, black', 4.6, 7.2, 10.2, 'C', 0.00158, 0.00252, 'P', 0.69, 'P'],
  ['Maple, red', 4.0, 8.2, 12.6, 'C', 0.00137, 0.00289, 'P', 0.54, 'P'],
  ['Maple, silver', 3.0, 7.2, 12.0, 'C', 0.00102, 0.00252, 'P', 0.47, 'P'],
  ['Maple, bigleaf', 3.7, 7.1, 11.6, 'C', 0.00126, 0.00248, 'P', 0.48, 'P'],
  ['Maple, sugar', 4.8, 9.9, 14.7, 'P', 0.00165, 0.00353, 'P', 0.63, 'P'],
  ['Oak, northern red', 4.0, 8.6, 13.7, 'P', 0.00137, 0.00304, 'W', 0.63, 'P'],
  ['Oak, southern red', 4.7, 11.3, 16.1, 'M', 0.00162, 0.00407, 'W', 0.59, 'M'],
  ['Oak, white', 5.6, 10.5, 16.3, 'P', 0.00194, 0.00376, 'W', 0.68, 'P'],
  ['Oak, chestnut', 5.3, 10.8, 16.4, 'P', 0.00183, 0.00388, 'W', 0.66, 'M'],
  ['Sassafras', 4.0, 6.2, 10.3, 'P', 0.00137, 0.00216, 'P', 0.46, 'M'],
  ['Sweetgum', 5.3, 10.2, 15.8, 'P', 0.00183, 0.00365, 'P', 0.52, 'M'],
  ['Sycamore, American', 5.0, 8.4, 14.1, 'P', 0.00172, 0.00296, 'P', 0.49, 'M'],
  ['Walnut, black', 5.5, 7.8, 12.8, 'P', 0.0019, 0.00274, 'P', 0.55, 'P'],
  ['Yellow-poplar', 4.6, 8.2, 12.7, 'P', 0.00158, 0.00289, 'W', 0.42, 'P'],
  ['Baldcypress', 3.8, 6.2, 10.5, 'M', 0.0013, 0.00216, 'W', 0.46, 'M'],
  ['Redcedar, eastern', 3.1, 4.7, 7.8, 'P', 0.00106, 0.00162, 'W', 0.47, 'M'],
  ['Redcedar, western', 2.4, 5.0, 6.8, 'P', 0.00081, 0.00172, 'W', 0.32, 'M'],
  ['Douglas-fir, coast', 4.8, 7.6, 12.4, 'P', 0.00165, 0.00267, 'W', 0.48, 'P'],
  ['Fir, white', 3.3, 7.0, 9.8, 'P', 0.00112, 0.00245, 'W', 0.39, 'M'],
  ['Pine, eastern white', 2.1, 6.1, 8.2, 'M', 0.00071, 0.00212, 'W', 0.35, 'M'],
  ['Pine, ponderosa', 3.9, 6.2, 9.7, 'M', 0.00133, 0.00216, 'W', 0.4, 'P'],
  ['Pine, loblolly', 4.8, 7.4, 12.3, 'P', 0.00165, 0.00259, 'W', 0.51, 'M'],
  ['Pine, longleaf', 5.1, 7.5, 12.2, 'P', 0.00176, 0.00263, 'W', 0.59, 'M'],
  ['Redwood, old-growth', 2.6, 4.4, 6.8, 'M', 0.00088, 0.00151, 'W', 0.4, 'P'],
];
