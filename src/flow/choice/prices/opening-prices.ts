import type { Rest } from '../generate.ts';
import type { Instance } from '../instance.ts';

/** Share of a board's usable area that comes to parts, for a first guess only. */
const usualYield = 0.75;

/**
 * Prices of pieces to begin a search for better ones: by area, at the rate of the dearest board that would be wanted if boards were
 * taken by what a square tick costs until they hold everything; and the most offcut credit that a piece costs on one of these.
 * Where that is nothing, half of what leaving a piece out costs.
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
  let claims = new Float64Array(kinds.length);
  for (const g of order) {
    if (wanted <= 0) break;
    rate = Math.max(rate, groups[g]!.cost / areas[g]!);
    claims = claims.map((claim, k) => Math.max(claim, groups[g]!.claims[k]!));
    wanted -= rest.copies[g]! * areas[g]!;
  }
  return Float64Array.from(kinds, ({ length, width, penalty }, k) => {
    const price = rate * length * width + claims[k]!;
    return price > 0 ? Math.min(penalty, price) : penalty / 2;
  });
}
