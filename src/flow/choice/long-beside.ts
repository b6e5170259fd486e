/** A rectangle of one kind as it lies on a board, grown by a kerf along and across. */
export interface GrownShape {
  readonly kind: number;
  readonly length: number;
  readonly width: number;
}

/** A board grown by a kerf along and across, what lies on it, and the least offcut kept, grown likewise. Ticks. */
export interface GrownBoard {
  readonly length: number;
  readonly width: number;
  readonly shapes: readonly GrownShape[];
  readonly offcut: { readonly length: number; readonly width: number };
}

/** Each long piece of these kinds beyond the first on one board keeps offcuts away from so much more. Square ticks, grown. */
export interface LongBeside {
  readonly kinds: readonly number[];
  readonly area: number;
}

/** So many sums are told apart; of more, a side counts as one that could be filled without rest. */
const mostSums = 3000;

/** Sets of long pieces that are looked at; of more nothing is said. */
const mostSets = 500;

/** Wider kinds alone may bring more for each piece; more kinds are taken in while so much of it is left. */
const shareKept = 0.6;

/** The largest sum of these sizes, each as often as one likes, that is at most `room`; `room` where there are too many to tell. */
export function largestSum(sizes: readonly number[], room: number): number {
  const known = new Set([0]);
  // A set is walked in the order in which it grew: each sum found is taken further in its turn.
  for (const sum of known) {
    for (const size of sizes) if (sum + size <= room) known.add(sum + size);
    if (known.size > mostSums) return room;
  }
  return Math.max(...known);
}

/**
 * Long pieces, two of which never lie one behind the other, lie one above the other. Where they leave a room r of the
 * board's width that is too narrow for an offcut, of it only ls(r) can be used by other pieces (`largestSum`), and the rest is
 * lost along the shortest of them, l: (r − ls(r)) l. Of N long pieces this is at least (N − 1) e, with e the least of
 * (r − ls(r)) l / (N − 1) over all sets of two and more that fit.
 *
 * Why this adds to the claims f g of single pieces (see claimedAreas). Let F(b) and G(a) be the most that scaled sizes
 * come to side by side in b and a: nothing side by side comes to more than the whole, F(width) = width, G(length) = length. By
 * induction over the cuts, what lies in a region a × b without long pieces comes to F(b) G(a) at most, and in one with long
 * pieces of widths U together, r = b − U, to
 *   (G(a) − l) F(b) + l (U + ls(r)).
 * A long piece itself: g(l) U. A crosscut leaves all of them on one side. A rip between them: both rooms together are no
 * more than r, and ls(r₁) + ls(r₂) ≤ ls(r₁ + r₂). A rip beside them frees a region narrower than r: it holds no
 * offcut and no piece that is scaled (which are required to be as wide as an offcut, else nothing is said), and so
 * a ls(b) at most, where a ≤ G(a), since a is as long as an offcut.
 * At the whole board this is length × width − l (r − ls(r)).
 * @param demand pieces wanted of each kind
 */
export function longBeside(board: GrownBoard, demand: ArrayLike<number>): LongBeside | null {
  const { length, width, shapes, offcut } = board;
  const isScaled = (shape: GrownShape): boolean =>
    shape.width + offcut.width > width || shape.length + offcut.length > length;
  if (shapes.some((shape) => isScaled(shape) && shape.width < offcut.width)) return null;
  const widths = [...new Set(shapes.map((shape) => shape.width))];
  const turns = new Set(
    shapes.flatMap(({ kind }, i) => (shapes.findIndex((s) => s.kind === kind) < i ? [kind] : [])),
  );
  const long = shapes
    .filter(
      (shape) =>
        2 * shape.length > length &&
        shape.length >= offcut.length &&
        shape.width + offcut.width <= width &&
        !turns.has(shape.kind),
    )
    .sort((a, b) => b.width - a.width || b.length - a.length);
  let best: LongBeside | null = null;
  for (let count = 1; count <= long.length; count += 1) {
    const taken = long.slice(0, count);
    const area = leastLost(taken, demand, widths, board);
    if (area < (best === null ? Number.MIN_VALUE : shareKept * best.area)) break;
    if (area < Infinity) best = { kinds: taken.map(({ kind }) => kind), area };
  }
  return best;
}

/** The least of (r − ls(r)) l / (N − 1) over all sets of N ≥ 2 that fit; 0 where one leaves room for an offcut, Infinity where there is none. */
function leastLost(
  long: readonly GrownShape[],
  demand: ArrayLike<number>,
  widths: readonly number[],
  { width, offcut }: GrownBoard,
): number {
  let least = Infinity;
  let sets = 0;
  const visit = (from: number, used: number, pieces: number, shortest: number): void => {
    sets += 1;
    if (sets > mostSets) return;
    if (pieces > 1) {
      const room = width - used;
      const lost = room >= offcut.width ? 0 : (room - largestSum(widths, room)) * shortest;
      least = Math.min(least, lost / (pieces - 1));
    }
    for (let i = from; i < long.length && least > 0; i += 1) {
      const shape = long[i]!;
      for (let more = 1; more <= demand[shape.kind]!; more += 1) {
        if (used + more * shape.width > width) break;
        visit(i + 1, used + more * shape.width, pieces + more, Math.min(shortest, shape.length));
      }
    }
  };
  visit(0, 0, 0, Infinity);
  return sets > mostSets ? 0 : least;
}
