/**
 * Equilibrium moisture content of wood, after Hailwood and Horrobin:
 * EMC = 1800/W × [ K h/(1 - K h) + (K1 K h + 2 K1 K2 K² h²) / (1 + K1 K h + K1 K2 K² h²) ], with W, K, K1, K2 quadratic
 * in the temperature. Source: Wood Handbook, FPL-GTR-282 (2021), equation 4-5 with its Celsius constants.
 * (The handbook's other equation, 4-6, differs by a few tenths; it is not used.)
 * @param celsius air temperature   @param humidity relative humidity, % from 0 to below 100
 * @returns % of ovendry weight
 */
export function equilibriumMoisture(celsius: number, humidity: number): number {
  const t = celsius;
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = (k * humidity) / 100;
  return (1800 / w) * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh));
}
