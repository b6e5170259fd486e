import type { Rest } from '../generate.ts';
import type { Instance } from '../instance.ts';

/** Share of a board's usable area that comes to parts, for a first guess only. */
const usualYield = 0.75;

/**
 * Prices of pieces to begin a search for better ones: by area, at the rate of the dearest board that would be wanted if boards were
 * taken by what a square tick costs until they hold everything. Where boards cost nothing, half of what leaving a piece out costs.
 * @returns one price for each kind, at most its penalty
 */
export function openingPrices({ kinds, groups }: Instance, rest: Rest): Float64Array {
  const areas = groups.map(({ plate }) => usualYield * plate.length * plate.width);
  const order = [...groups.keys()].filter((g) => rest.copies[g]! > 0 && areas[g]! > 0);
  order.sort((a, b) => groups[a]!.cost / areas[a]! - groups[b]!.cost / areas[b]! || a - b);
  let wanted = kinds.reduce(
    (sum, kind, k) => sum + Math.max(0, rest.demand[k]!) * kind.length * kind.width,
    0,
  );
  let rate = 0;
  for (const g of order) {
    if (wanted <= 0) break;
    rate = Math.max(rate, groups[g]!.cost / areas[g]!);
    wanted -= rest.copies[g]! * areas[g]!;
  }
  return Float64Array.from(kinds, ({ length, width, penalty }) =>
    rate > 0 ? Math.min(penalty, rate * length * width) : penalty / 2,
  );
}
