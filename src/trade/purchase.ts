/**
 * How much to buy over the net board feet of the parts, when no boards are at hand to lay them out on. Two conventions that
 * are never interchangeable: "add p %" is net × (1 + p/100), "yield y" is net / y; so one third lost means adding one half.
 */
export function addPercent(net: number, percent: number): number {
  return net * (1 + percent / 100);
}

/** Net over yield. @param part share of the purchase that ends in parts, above 0, at most 1 */
export function divideByYield(net: number, part: number): number {
  return net / part;
}

/** Share of the purchase that is lost when `percent` was added to the net. */
export function lostShare(percent: number): number {
  return percent / (100 + percent);
}

/** A rule of thumb: what to add for which stock, and who says so. */
export interface PurchaseRule {
  readonly stock: string;
  readonly percent: readonly [least: number, most: number];
  readonly source: string;
}

/** Rules of thumb in print; they disagree, so a tool shows them beside its own layout, never instead of it. */
export const purchaseRules: readonly PurchaseRule[] = [
  { stock: 'clean stock, simple parts', percent: [15, 15], source: 'purchase advice of the trade' },
  { stock: 'top grades', percent: [20, 20], source: 'a shop tip' },
  { stock: 'common grades', percent: [30, 50], source: 'a shop tip; trade advice' },
  { stock: 'square-edged hardwood', percent: [15, 20], source: 'a furniture-making text' },
  { stock: 'waney-edged boards', percent: [60, 60], source: 'a furniture-making text' },
];
