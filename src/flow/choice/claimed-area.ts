import type { Kind, Plate } from '../patterns/plate.ts';
import type { BlankKind, Member } from './instance.ts';

/** The least offcut that the shop keeps; a smaller one earns nothing. Ticks. */
export interface LeastOffcut {
  readonly length: number;
  readonly width: number;
}

/** So many sums are told apart; of more, a side counts as one that could be filled without rest. */
const mostSums = 3000;

/** The largest sum of these sizes, each as often as one likes, that is at most `room`; `room` where there are too many to tell. */
function largestSum(sizes: readonly number[], room: number): number {
  const known = new Set([0]);
  // A set is walked in the order in which it grew: each sum found is taken further in its turn.
  for (const sum of known) {
    for (const size of sizes) if (sum + size <= room) known.add(sum + size);
    if (known.size > mostSums) return room;
  }
  return Math.max(...known);
}

/**
 * What pieces take of one side of a board, the kerf beside each included (all sizes here are grown by a kerf, the side
 * too), so that whatever lies side by side comes to the side at most when offcuts count as they are:
 *   f(u) = u                            where an offcut has room beside the piece: u ≤ side − offcut;
 *   f(u) = u + (side − most(u)) / m     elsewhere: beside such a wide piece no offcut is kept,
 * with most(u) the most that a row with the piece holds, and m the number of wide pieces that go in one row.
 * Why: of a row with wide pieces some room r is left; each of them, at most m, adds at most r / m, since r is no less than
 * side − most(u) for any of them. A row with none is as it is.
 */
function scaleOf(sizes: readonly number[], side: number, offcut: number): (size: number) => number {
  const fitting = [...new Set(sizes)].filter((size) => size > 0 && size <= side);
  const wide = fitting.filter((size) => size + offcut > side);
  if (wide.length === 0) return (size) => size;
  const together = Math.floor(side / Math.min(...wide));
  const scaled = new Map(
    wide.map((size) => [size, size + (side - size - largestSum(fitting, side - size)) / together]),
  );
  return (size) => scaled.get(size) ?? size;
}

/** What is cut as whole rectangles: a run as one where all its pieces are equally wide, else piece by piece. */
function rectanglesOf({ members, length, width }: BlankKind): readonly Pick<Member, 'length' | 'width'>[] {
  return members.every((member) => member.width === width) ? [{ length, width }] : members;
}

/**
 * Square ticks of the usable area from which one piece of each kind keeps kept offcuts away: its own, the kerf beside it,
 * and what beside it is too narrow or too short to be kept. Kept offcuts cover no more of the plate than what all
 * pieces on it leave of its area after these claims.
 *
 * Why: pieces and kept offcuts, each grown by a kerf along and across, lie in the plate grown likewise and do not overlap
 * (what a cut parts, its kerf parts). Scaled along and across by a conservative scale each (`scaleOf`: what fits side by
 * side still does), their areas together stay within it (Fekete and Schepers 2004). An offcut's own share of
 * its grown area is at most the plate's, L W / ((L + kerf)(W + kerf)) = r, so that
 *   offcuts ≤ r Σ grown offcuts ≤ L W − r Σ f(w + kerf) g(l + kerf).
 * No claim is less than the piece's own area, since u/(u + kerf) ≤ W/(W + kerf).
 * @param blanks aligned with kinds; a kind that may never lie here claims its own area, and shapes no row
 */
export function claimedAreas(
  plate: Plate,
  kinds: readonly Kind[],
  blanks: readonly BlankKind[],
  least: LeastOffcut,
): Float64Array {
  const { crosscutKerf: along, ripKerf: across } = plate;
  const own = Float64Array.from(blanks, ({ length, width }) => length * width);
  if (plate.length <= 0 || plate.width <= 0) return own;
  const lying = kinds.map(({ shapes, clearances }, k) => {
    const fitting = shapes.filter(({ length, width }) => length <= plate.length && width <= plate.width);
    if (clearances.length === 0 || fitting.length === 0) return [];
    return blanks[k]!.members.length > 1 ? rectanglesOf(blanks[k]!) : fitting;
  });
  const all = lying.flat();
  const long = scaleOf(
    all.map(({ length }) => length + along),
    plate.length + along,
    least.length + along,
  );
  const wide = scaleOf(
    all.map(({ width }) => width + across),
    plate.width + across,
    least.width + across,
  );
  const share = (plate.length * plate.width) / ((plate.length + along) * (plate.width + across));
  return own.map((area, k) => {
    const shapes = lying[k]!;
    const claims = shapes.map(({ length, width }) => share * long(length + along) * wide(width + across));
    if (claims.length === 0) return area;
    // One piece lies one way or the other; the pieces of a run all lie there.
    return blanks[k]!.members.length > 1
      ? claims.reduce((sum, claim) => sum + claim, 0)
      : Math.min(...claims);
  });
}
