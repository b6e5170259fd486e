import type { Column } from '../column.ts';
import type { Rest } from '../generate.ts';
import type { TightPattern } from './tight-patterns.ts';

/** Nodes left; counted down. */
export interface Nodes {
  left: number;
}

/**
 * Picks patterns that hold every piece exactly and lose no more than so much together: depth first, always on the piece
 * or board that the fewest patterns still serve (Knuth 2000). Null when there are none, or none within the nodes.
 */
export function coverExactly(
  patterns: readonly TightPattern[],
  { demand, copies }: Rest,
  loss: number,
  nodes: Nodes,
): Column[] | null {
  const wanted = demand.slice();
  const left = copies.slice();
  const chosen: Column[] = [];
  const fits = ({ column, loss: lost }: TightPattern, most: number): boolean =>
    lost <= most &&
    left[column.group]! > 0 &&
    column.kinds.every((kind, i) => column.counts[i]! <= wanted[kind]!);
  const search = (among: readonly TightPattern[], most: number): boolean => {
    if (wanted.every((count) => count <= 0)) return true;
    nodes.left -= 1;
    if (nodes.left < 0) return false;
    const here = scarcest(among, wanted);
    for (const pattern of here) {
      const { column } = pattern;
      chosen.push(column);
      spendOn(column, wanted, left, 1);
      const rest = most - pattern.loss;
      if (
        search(
          among.filter((other) => fits(other, rest)),
          rest,
        )
      )
        return true;
      spendOn(column, wanted, left, -1);
      chosen.pop();
    }
    return false;
  };
  const start = patterns.filter((pattern) => fits(pattern, loss));
  return search(start, loss) ? chosen : null;
}

function spendOn({ group, kinds, counts }: Column, wanted: Int32Array, left: Int32Array, sign: number): void {
  left[group] = left[group]! - sign;
  kinds.forEach((kind, i) => (wanted[kind] = wanted[kind]! - sign * counts[i]!));
}

/** The patterns that hold the piece which fewest hold: one of them must be used. Empty when a piece has none. */
function scarcest(patterns: readonly TightPattern[], wanted: Int32Array): readonly TightPattern[] {
  const serve = new Int32Array(wanted.length);
  for (const { column } of patterns) for (const kind of column.kinds) serve[kind] = serve[kind]! + 1;
  let least = -1;
  wanted.forEach((count, kind) => {
    if (count > 0 && (least < 0 || serve[kind]! < serve[least]!)) least = kind;
  });
  return patterns.filter(({ column }) => column.kinds.includes(least));
}
