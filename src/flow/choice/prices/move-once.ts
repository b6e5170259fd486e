import type { Rest } from '../generate.ts';
import type { Instance } from '../instance.ts';

/** How far a price may move at once, as a share of it. */
const mostAtOnce = 0.1;

/**
 * Moves each price by what is wanted of its kind and not cut, as a share of the demand; none above its kind's penalty.
 * @param prices changed   @param cut pieces of each kind that some boards cut   @param share of all boards that these are
 */
export function moveOnce(
  { kinds }: Instance,
  { demand }: Rest,
  prices: Float64Array,
  cut: Float64Array,
  { share, step }: { readonly share: number; readonly step: number },
): void {
  prices.forEach((price, k) => {
    const wanted = demand[k]!;
    if (wanted <= 0) return;
    const lacking = (share * wanted - cut[k]!) / wanted;
    const move = Math.max(-mostAtOnce, Math.min(mostAtOnce, step * lacking));
    prices[k] = Math.min(kinds[k]!.penalty, price * Math.exp(move));
  });
}
