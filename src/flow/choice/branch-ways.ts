import type { Alternative, Instance } from './instance.ts';
import { type SearchNode, fraction, wholeTolerance } from './search-node.ts';

/**
 * The two children that differ in how many copies are made in one way, of which the master makes a fraction: the largest
 * piece of wood first, the nearer whole number last. Null when all are whole.
 */
export function wayChildren(instance: Instance, next: SearchNode, made: Float64Array): SearchNode[] | null {
  let most = wholeTolerance;
  let at: { a: number; w: number; count: number } | null = null;
  let row = 0;
  next.alternatives.forEach(({ ways }, a) =>
    ways.forEach(({ kind, strips, least }, w) => {
      const count = least + made[row]!;
      row += 1;
      const { length, width } = instance.kinds[kind]!;
      const here = fraction(count) * strips * length * width;
      if (fraction(count) <= wholeTolerance || here <= most) return;
      most = here;
      at = { a, w, count };
    }),
  );
  if (at === null) return null;
  const { a, w, count } = at as { a: number; w: number; count: number };
  const floor = Math.floor(count);
  const children = [limited(next, a, w, { most: floor }), limited(next, a, w, { least: floor + 1 })];
  if (count - floor < 0.5) children.reverse();
  return children.filter((child) => child !== null);
}

/** The node with another limit on how many copies are made in a way; null where they cannot all be made then. */
function limited(
  node: SearchNode,
  at: number,
  way: number,
  limit: { readonly least: number } | { readonly most: number },
): SearchNode | null {
  const alternatives = node.alternatives.map((each, a): Alternative => {
    if (a !== at) return each;
    const ways = each.ways.map((one, w) => (w === way ? { ...one, ...limit } : one));
    // No more are made in all than are wanted.
    const spare = each.copies - ways.reduce((sum, { least }) => sum + least, 0);
    return { ...each, ways: ways.map((one) => ({ ...one, most: Math.min(one.most, one.least + spare) })) };
  });
  const { copies, ways } = alternatives[at]!;
  const isMade = ways.every(({ least, most }) => least <= most);
  const enough = ways.reduce((sum, { most }) => sum + most, 0) >= copies;
  return isMade && enough ? { ...node, alternatives } : null;
}
