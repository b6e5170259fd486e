import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { CutProblem, Junction } from './cut-tree.ts';
import type { CutKind } from './stage.ts';

/** One place to cut a workpiece, and which pieces then lie on which side. A side's region is null when nothing is left. */
export interface CutPosition {
  readonly at: number;
  readonly kerf: number;
  /** Whether it goes between two neighbours of a run. */
  readonly partsRun: boolean;
  readonly before: readonly number[];
  readonly after: readonly number[];
  readonly beforeRegion: Rectangle | null;
  readonly afterRegion: Rectangle | null;
}

/** An extent of a workpiece or piece in the direction a cut divides: along the board for a crosscut. */
interface Span {
  readonly start: number;
  readonly end: number;
}

function spanOf(kind: CutKind, r: Rectangle): Span {
  return kind === 'crosscut' ? { start: r.x, end: r.x + r.length } : { start: r.y, end: r.y + r.width };
}

/**
 * All useful places for a cut of one kind through the workpiece, from its near end on:
 *
 *     ├──before──┤▒▒gap▒▒├──after──┤      a gap at least one kerf wide between two groups of pieces:
 *     ├──before──┤█        ...     ┤      the kerf at the gap's near end, the rest joins what follows,
 *     ├──before──┤        █┤ after ┤      or at its far end, the rest stays with what came before,
 *                                         or where one side keeps just the shortest length that may be ripped.
 *
 * The leftover before the first group and behind the last is cut off likewise; there the kerf may run off the
 * workpiece. Between two pieces of a run only the run's own kerf is allowed, through their strip alone.
 * @param nearEndsOnly leaves out the far ends of gaps between groups
 */
export function cutPositions(
  problem: CutProblem,
  kind: CutKind,
  region: Rectangle,
  inside: readonly number[],
  nearEndsOnly: boolean,
): CutPosition[] {
  const { rules, pieces } = problem;
  const whole = spanOf(kind, region);
  const kerf = kind === 'crosscut' ? rules.crosscutKerf : rules.ripKerf;
  const spans = inside.map((piece) => ({ piece, ...spanOf(kind, pieces[piece] as Rectangle) }));
  spans.sort((a, b) => a.start - b.start || a.piece - b.piece);
  const order = spans.map((span) => span.piece);
  const found: CutPosition[] = [];
  let reached = -Infinity;
  for (let count = 0; count <= spans.length; count += 1) {
    const low = reached;
    const high = spans[count]?.start ?? Infinity;
    reached = Math.max(reached, spans[count]?.end ?? Infinity);
    if (high - low < kerf) continue;
    const before = order.slice(0, count);
    const meeting = meetingKerf(problem, kind, inside, before);
    if (meeting === 'forbidden' || (meeting !== null && high - low !== meeting)) continue;
    const own = meeting ?? kerf;
    const places = placesIn({ low, high }, whole, own, kind === 'crosscut' ? rules.shortestRip : 0);
    for (const at of places) {
      if (nearEndsOnly && at === high - own && low > -Infinity && at !== low) continue;
      const partsRun = meeting !== null;
      const after = order.slice(count);
      found.push({ at, kerf: own, partsRun, before, after, ...sides(kind, region, at, own) });
    }
  }
  return found;
}

/** Where the blade may enter in the gap from `low` to `high` (infinite at the workpiece's ends), ascending. */
function placesIn(gap: { low: number; high: number }, whole: Span, kerf: number, least: number): number[] {
  const { low, high } = gap;
  if (low === -Infinity && high <= whole.start) return [];
  if (high === Infinity && low >= whole.end) return [];
  if (high - low < kerf) return [];
  const places = new Set<number>();
  if (low > -Infinity) places.add(low);
  if (high < Infinity) places.add(high - kerf);
  for (const at of least > 0 ? [whole.start + least, whole.end - least - kerf] : []) {
    const isInGap = at > Math.max(low, whole.start) && at + kerf < Math.min(high, whole.end);
    if (isInGap) places.add(at);
  }
  return [...places].filter((at) => at < whole.end && at + kerf > whole.start).sort((a, b) => a - b);
}

/**
 * The kerf that a run demands of a cut: null when the cut parts no two neighbours of a run; forbidden for a rip, for
 * a cut between several pairs at once, and where something lies beside the two in the workpiece (a tilted blade would
 * spoil it).
 */
function meetingKerf(
  problem: CutProblem,
  kind: CutKind,
  inside: readonly number[],
  before: readonly number[],
): number | 'forbidden' | null {
  if (problem.junctions.length === 0) return null;
  const here = new Set(inside);
  const near = new Set(before);
  const parted = problem.junctions.filter(
    (pair) => here.has(pair.before) && here.has(pair.after) && near.has(pair.before) !== near.has(pair.after),
  );
  const [pair] = parted;
  if (pair === undefined) return null;
  const fits = parted.length === 1 && kind === 'crosscut' && near.has(pair.before);
  return fits && isAlone(problem, pair, inside) ? pair.kerf : 'forbidden';
}

/** Whether nothing in the workpiece lies beside the two pieces that meet: only they are in reach of a tilted blade. */
function isAlone(problem: CutProblem, pair: Junction, inside: readonly number[]): boolean {
  const [near, far] = [problem.pieces[pair.before], problem.pieces[pair.after]] as [Rectangle, Rectangle];
  return inside.every((index) => {
    const { x, length } = problem.pieces[index] as Rectangle;
    return index === pair.before || index === pair.after || x + length <= near.x || x >= far.x + far.length;
  });
}

function sides(
  kind: CutKind,
  region: Rectangle,
  at: number,
  kerf: number,
): Pick<CutPosition, 'beforeRegion' | 'afterRegion'> {
  const { start, end } = spanOf(kind, region);
  return {
    beforeRegion: at > start ? slice(kind, region, start, at) : null,
    afterRegion: at + kerf < end ? slice(kind, region, at + kerf, end) : null,
  };
}

/** The part of a workpiece between two positions in the direction the cut divides. */
export function slice(kind: CutKind, region: Rectangle, start: number, end: number): Rectangle {
  return kind === 'crosscut'
    ? { ...region, x: start, length: end - start }
    : { ...region, y: start, width: end - start };
}
