import type { Kind, Plate } from '../patterns/plate.ts';
import type { BlankKind, Member } from './instance.ts';
import { type GrownBoard, type LongBeside, largestSum, longBeside } from './long-beside.ts';

/** The least offcut that the shop keeps; a smaller one earns nothing. Ticks. */
export interface LeastOffcut {
  readonly length: number;
  readonly width: number;
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

/** Square ticks from which pieces keep kept offcuts away: each piece of a kind, and long ones beside each other so much more. */
export interface Claims {
  readonly areas: Float64Array;
  readonly beside: LongBeside | null;
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
): Claims {
  const { crosscutKerf: along, ripKerf: across } = plate;
  const own = Float64Array.from(blanks, ({ length, width }) => length * width);
  if (plate.length <= 0 || plate.width <= 0) return { areas: own, beside: null };
  const lying = kinds.map(({ shapes, clearances }, k) => {
    const fitting = shapes.filter(({ length, width }) => length <= plate.length && width <= plate.width);
    if (clearances.length === 0 || fitting.length === 0) return [];
    return blanks[k]!.members.length > 1 ? rectanglesOf(blanks[k]!) : fitting;
  });
  const board: GrownBoard = {
    length: plate.length + along,
    width: plate.width + across,
    shapes: lying.flatMap((list, kind) =>
      list.map(({ length, width }) => ({ kind, length: length + along, width: width + across })),
    ),
    offcut: { length: least.length + along, width: least.width + across },
  };
  const { shapes, offcut } = board;
  const long = scaleOf(
    shapes.map(({ length }) => length),
    board.length,
    offcut.length,
  );
  const wide = scaleOf(
    shapes.map(({ width }) => width),
    board.width,
    offcut.width,
  );
  const share = (plate.length * plate.width) / (board.length * board.width);
  const areas = own.map((area, k) => {
    const claims = shapes
      .filter(({ kind }) => kind === k)
      .map(({ length, width }) => share * long(length) * wide(width));
    if (claims.length === 0) return area;
    // One piece lies one way or the other; the pieces of a run all lie there.
    return blanks[k]!.members.length > 1
      ? claims.reduce((sum, claim) => sum + claim, 0)
      : Math.min(...claims);
  });
  const demand = blanks.map((blank) => blank.demand);
  const found = longBeside(board, demand);
  return { areas, beside: found === null ? null : { kinds: found.kinds, area: share * found.area } };
}
