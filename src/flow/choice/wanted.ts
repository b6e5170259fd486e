import type { Rest } from './generate.ts';
import type { Alternative, Instance } from './instance.ts';

/** What a master is to cover: pieces of kinds that are wanted for themselves, and copies of alternatives. */
export function wantedOf(
  instance: Instance,
  rest: Rest,
): { readonly demand: readonly number[]; readonly alternatives: readonly Alternative[] } {
  const alternatives = instance.alternatives ?? [];
  const either = new Set(alternatives.flatMap(({ ways }) => ways.map(({ kind }) => kind)));
  return { demand: Array.from(rest.demand, (demand, k) => (either.has(k) ? 0 : demand)), alternatives };
}

/** What all that is wanted is worth at these prices, a copy of an alternative as much as its cheapest way. */
export function dueFor(instance: Instance, rest: Rest, kindPrice: Float64Array): number {
  const { demand, alternatives } = wantedOf(instance, rest);
  const plain = demand.reduce((sum, each, k) => sum + each * kindPrice[k]!, 0);
  return alternatives.reduce(
    (sum, { copies, ways }) =>
      sum + copies * Math.min(...ways.map(({ kind, strips }) => strips * kindPrice[kind]!)),
    plain,
  );
}
