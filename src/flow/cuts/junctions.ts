import { bevelKerf } from '../../trade/miter.ts';
import type { PlacedPiece } from '../choice/choice.ts';
import type { Part } from '../parts/part.ts';
import type { Shop } from '../shop/shop.ts';
import type { Junction } from './cut-tree.ts';

/**
 * Where the pieces of each run meet along one board. A run may go either way along the board (the strip can be
 * turned end for end); the kerf is that of the steeper of the two ends that meet.
 */
export function junctions(pieces: readonly PlacedPiece[], parts: readonly Part[], shop: Shop): Junction[] {
  const runs = new Map<number, number[]>();
  pieces.forEach((piece, index) => {
    if (piece.run === undefined) return;
    const members = runs.get(piece.run.run) ?? [];
    members.push(index);
    runs.set(piece.run.run, members);
  });
  const at = (index: number): PlacedPiece => pieces[index] as PlacedPiece;
  const found: Junction[] = [];
  for (const members of runs.values()) {
    members.sort((a, b) => (at(a).run?.order ?? 0) - (at(b).run?.order ?? 0));
    for (let next = 1; next < members.length; next += 1) {
      const [first, second] = [members[next - 1] as number, members[next] as number];
      const left = parts[at(first).part];
      const right = parts[at(second).part];
      const bevel = Math.max(Math.abs(left?.rightEnd ?? 0), Math.abs(right?.leftEnd ?? 0));
      // A kerf of 0 comes back as −0, which JSON would not keep.
      const kerf = Math.max(0, bevelKerf(shop.crosscutKerf, bevel));
      const isForward = at(first).x < at(second).x;
      found.push({ before: isForward ? first : second, after: isForward ? second : first, kerf });
    }
  }
  return found;
}
