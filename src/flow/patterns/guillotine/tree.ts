import type { Placement } from '../plate.ts';
import type { Net } from './net.ts';
import { statesPerLevel } from './net.ts';

/**
 * Cutting trees in parallel arrays. A node is a leaf (`left` = −1 − leaf, an index into the net's leaves) or
 * joins the nodes `left` and `right`: by the crosscut between them (`rip` = −1), or by the rip that is split
 * number `rip` of the rows. `born` is the state it was made in; it may stand in any state that leads there
 * by cutting off waste.
 */
export interface Trees {
  readonly left: ArrayLike<number>;
  readonly right: ArrayLike<number>;
  readonly rip: ArrayLike<number>;
  readonly born: ArrayLike<number>;
}

/** How many of each kind a tree holds; a node used twice counts twice. @param counts out */
export function countKinds(net: Net, trees: Trees, root: number, counts: Int32Array): void {
  counts.fill(0);
  if (root < 0) return;
  const open = [root];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    const left = trees.left[node]!;
    if (left < 0) counts[net.leaves.kind[-1 - left]!]! += 1;
    else open.push(left, trees.right[node]!);
  }
}

/**
 * The pieces of a tree on the plate, no kind beyond its cap: what is over is left out.
 *
 * With places, each piece lies where its state does. With sizes, parts are pushed together: the second part
 * of a join begins where what the first really fills ends, so waste gathers at the far ends. A part that is
 * ripped must be `ripFrom` long at the time, so it keeps that much.
 * @param root −1 for nothing
 */
export function layOut(net: Net, trees: Trees, root: number, caps: ArrayLike<number>): Placement[] {
  const left = Array.from({ length: caps.length }, (_, kind) => caps[kind]!);
  const placements: Placement[] = [];
  const height = net.rows.count;

  /** Lays a leaf; gives what it takes of the plate, kerf included. */
  const putLeaf = (leaf: number, x: number, y: number): [number, number] => {
    const kind = net.leaves.kind[leaf]!;
    const length = net.leaves.length[leaf]!;
    const width = net.leaves.width[leaf]!;
    if (left[kind]! > 0) {
      left[kind]! -= 1;
      placements.push({ kind, clearance: net.leaves.clearance[leaf]!, x, y, length, width });
    }
    return [length + net.crosscutKerf, width + net.ripKerf];
  };

  /** @param slot the row it stands in */
  const put = (node: number, x: number, y: number, slot: number): [number, number] => {
    const state = trees.born[node]! % statesPerLevel(net);
    const row = state % height;
    const [a, b] = [trees.left[node]!, trees.right[node]!];
    let extent: [number, number];
    if (a < 0) {
      const column = Math.floor(state / height);
      extent = net.placed
        ? putLeaf(-1 - a, net.columns.near[column]!, net.rows.near[row]! + net.leaves.offset[-1 - a]!)
        : putLeaf(-1 - a, x, y);
    } else if (trees.rip[node]! < 0) {
      const first = put(a, x, y, row);
      const second = put(b, x + first[0], y, row);
      extent = [first[0] + second[0], Math.max(first[1], second[1])];
    } else {
      const first = put(a, x, y, net.rows.first[trees.rip[node]!]!);
      const second = put(b, x, y + first[1], net.rows.second[trees.rip[node]!]!);
      extent = [Math.max(first[0], second[0], net.ripFrom), first[1] + second[1]];
    }
    const isRipped = slot !== row || (a < 0 && extent[1] !== net.rows.size[row]);
    if (isRipped) extent[0] = Math.max(extent[0], net.ripFrom);
    return extent;
  };

  if (root >= 0) put(root, 0, 0, height - 1);
  return placements;
}
