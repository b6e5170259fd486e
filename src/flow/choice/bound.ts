import type { Instance } from './instance.ts';

/**
 * The Lagrangian bound at given piece prices π (any prices 0 ≤ π ≤ penalty give a valid one):
 *   Z ≥ Σ d_k π_k − Σ_g q_g · max(0, B_g(π) − c_g),
 * where B_g is an upper bound on what any pattern of group g can be worth at those prices.
 * @param target for each group the worth above which the exact best is wanted; below it a bound suffices
 */
export function lagrangianBound(
  instance: Instance,
  price: Float64Array,
  target: (group: number) => number,
): number {
  let bound = 0;
  instance.kinds.forEach((kind, k) => (bound += kind.demand * price[k]!));
  instance.groups.forEach((group, g) => {
    const worth = group.pricer.bound(price, target(g)).bound;
    bound -= group.copies * Math.max(0, worth - group.cost);
  });
  return bound;
}

/**
 * The least cost of boards whose usable area, grown by a kerf each way, holds the pieces' area, grown likewise:
 * each piece with the kerf beside it claims (length + kerf)(width + kerf) of the grown board, and no two claims
 * overlap. A knapsack over the boards, solved as its continuous relaxation: boards by cost per area.
 * Needs no pattern at all, so it is the bound at once; valid only when every piece must be laid out.
 */
export function areaBound(instance: Instance): number {
  const first = instance.groups[0];
  if (first === undefined) return 0;
  const { crosscutKerf: along, ripKerf: across } = first.plate;
  const grown = (length: number, width: number): number => (length + along) * (width + across);
  // A piece laid across the board swaps the two kerfs: the smaller claim of the two is safe.
  let need = 0;
  for (const { length, width, demand } of instance.kinds) {
    need += demand * Math.min(grown(length, width), grown(width, length));
  }
  const boards = instance.groups
    .map((group) => ({
      copies: group.copies,
      cost: group.cost,
      area: grown(group.plate.length, group.plate.width),
    }))
    .filter((board) => board.area > 0)
    .sort((a, b) => a.cost / a.area - b.cost / b.area);
  let cost = 0;
  for (const board of boards) {
    const copies = Math.min(board.copies, Math.max(0, need / board.area));
    cost += copies * board.cost;
    need -= copies * board.area;
  }
  return cost;
}
