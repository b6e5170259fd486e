import type { Rest } from './generate.ts';
import type { Instance } from './instance.ts';

/**
 * The best bound that prices give when all of them are brought down by one factor θ ≤ 1:
 *   max over θ of  θ·due − Σ_g q_g · max(0, θ·w_g − c_g).
 * With θ = 1 that is the Lagrangian bound; with the largest θ at which no board pays, that of Farley (1990), which is
 * the better one where a board has more copies than any layout needs. A board's pattern is worth no more than θ·w_g at
 * prices brought down so, since what a piece claims for itself does not come down. Concave in θ with a corner where each board
 * begins to pay.
 * @param due what all that is wanted is worth at the prices, side rows taken off
 * @param worths by group, what a copy is worth at most at these prices, ≥ 0
 */
export function scaledBound({ groups }: Instance, rest: Rest, due: number, worths: Float64Array): number {
  const beginsAt = groups.map(({ cost }, g) => (worths[g]! > cost ? Math.max(0, cost) / worths[g]! : 1));
  const paying = [...groups.keys()].filter((g) => rest.copies[g]! > 0 && beginsAt[g]! < 1);
  paying.sort((a, b) => beginsAt[a]! - beginsAt[b]! || a - b);
  let slope = due;
  let spared = 0;
  for (const g of paying) {
    const next = slope - rest.copies[g]! * worths[g]!;
    if (next < 0) return beginsAt[g]! * slope + spared;
    slope = next;
    spared += rest.copies[g]! * groups[g]!.cost;
  }
  return slope + spared;
}
