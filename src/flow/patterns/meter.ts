/**
 * Counts work, so that efforts and budgets mean the same on every machine: one unit is about one step of an inner
 * loop of pricing. Shared by all pricers of one solve.
 */
export interface Meter {
  spent: number;
}
