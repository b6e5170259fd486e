import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { type CutPosition, cutPositions } from './cut-positions.ts';
import { type Score, addScores, isBetter, leftoverScore, nothing } from './score.ts';
import { type CutKind, stageAfter } from './stage.ts';

/** What the saw and the shop allow and what is worth keeping; all lengths in ticks. */
export interface CutRules {
  readonly crosscutKerf: number;
  readonly ripKerf: number;
  readonly shortestRip: number;
  readonly stages: number | 'any';
  readonly leastOffcutLength: number;
  readonly leastOffcutWidth: number;
  /** Whether kept offcuts earn money back: then their area counts before the number of cuts. */
  readonly offcutsEarn: boolean;
  /** What a kept offcut is good for, a whole number: decides between trees of equal money and cuts. */
  readonly offcutWorth: (region: Rectangle) => number;
}

/** Two pieces of a run that meet along the board: the cut between them takes exactly this kerf and no other. */
export interface Junction {
  /** Indices of pieces: the one nearer the butt end, then the one behind it. */
  readonly before: number;
  readonly after: number;
  readonly kerf: number;
}

/** Settings that other cuts of the job need too: lengths for the stop, widths for the fence. */
export interface Favoured {
  readonly lengths: ReadonlySet<number>;
  readonly widths: ReadonlySet<number>;
}

/** One workpiece with the blanks that must come out of it. */
export interface CutProblem {
  readonly workpiece: Rectangle;
  readonly pieces: readonly Rectangle[];
  readonly junctions: readonly Junction[];
  readonly rules: CutRules;
  readonly favoured: Favoured;
}

/** How a workpiece is cut up: it is a piece, a leftover, or is cut in two (a side is null when the kerf eats it). */
export type CutNode =
  | { readonly kind: 'piece'; readonly region: Rectangle; readonly piece: number }
  | { readonly kind: 'leftover'; readonly region: Rectangle }
  | {
      readonly kind: CutKind;
      readonly region: Rectangle;
      readonly at: number;
      readonly kerf: number;
      /** Whether it goes between two neighbours of a run, through their strip alone. */
      readonly partsRun: boolean;
      readonly before: CutNode | null;
      readonly after: CutNode | null;
    };

interface Solved {
  readonly node: CutNode;
  readonly score: Score;
}

/** How hard the search tries; `most` bounds the workpieces (at a stage) it weighs before it gives up. */
interface Thoroughness {
  readonly most: number;
  /** Whether a gap is tried at its near end only: what is spare goes to the far side. */
  readonly nearEndsOnly: boolean;
  /** Whether the first legal tree will do. */
  readonly firstLegal: boolean;
}

/** One after another until one comes to an answer; the last always does. */
const searches: readonly Thoroughness[] = [
  { most: 30_000, nearEndsOnly: false, firstLegal: false },
  { most: 30_000, nearEndsOnly: true, firstLegal: false },
  { most: Infinity, nearEndsOnly: false, firstLegal: true },
];

/**
 * The guillotine cuts that free all pieces from the workpiece, or null when none obeys the rules.
 *
 * Complete: every cut between two groups of pieces is tried at both ends of the gap between them (and where it
 * leaves a side just long enough to rip), to any depth that `stages` allows, each workpiece solved once per stage.
 * Among legal trees the best by `Score`: offcut money if any, fewest cuts, largest offcuts, repeated settings;
 * ties go to crosscuts before rips and cuts nearer the butt end. Boards of very many pieces get a less thorough
 * search (see `searches`): still a legal tree whenever there is one, but perhaps not the best.
 * Cost: about (number of sub-rectangles) × (cuts in each).
 */
export function cutTree(problem: CutProblem): CutNode | null {
  for (const thoroughness of searches) {
    const found = search(problem, thoroughness);
    if (found !== 'unfinished') return found;
  }
  return null;
}

/**
 * Cuts of one kind through the same workpiece can be made in any order, so each such series is tried from the near
 * end on only: what lies before a cut is not cut the same way again (`barred`). With runs it may have to be, since
 * their tilted cuts wait until the strip is alone.
 */
function search(problem: CutProblem, how: Thoroughness): CutNode | null | 'unfinished' {
  const { rules, pieces } = problem;
  const anyOrder = problem.junctions.length > 0;
  const solved = new Map<string, Solved | null>();

  function solve(
    region: Rectangle,
    inside: readonly number[],
    stage: number,
    barred: CutKind | null,
  ): Solved | null {
    if (inside.length === 0) {
      return { node: { kind: 'leftover', region }, score: leftoverScore(region, rules) };
    }
    const only = inside.length === 1 ? pieces[inside[0] as number] : undefined;
    if (only !== undefined && only.length === region.length && only.width === region.width) {
      return { node: { kind: 'piece', region, piece: inside[0] as number }, score: nothing };
    }
    const key = `${region.x},${region.y},${region.length},${region.width},${stage},${barred ?? ''}`;
    const known = solved.get(key);
    if (known !== undefined) return known;
    const answer = bestCut(region, inside, stage, barred);
    solved.set(key, answer);
    return answer;
  }

  function bestCut(
    region: Rectangle,
    inside: readonly number[],
    stage: number,
    barred: CutKind | null,
  ): Solved | null {
    let best: Solved | null = null;
    for (const kind of kindsFrom(stage)) {
      const next = stageAfter(stage, kind);
      if (kind === barred || (rules.stages !== 'any' && next > rules.stages)) continue;
      if (kind === 'rip' && region.length < rules.shortestRip) continue;
      for (const cut of cutPositions(problem, kind, region, inside, how.nearEndsOnly)) {
        if (solved.size > how.most) return null;
        const made = makeCut(region, cut, kind, rules.stages === 'any' ? 0 : next);
        if (made !== null && (best === null || isBetter(made.score, best.score))) best = made;
        if (best !== null && how.firstLegal) return best;
      }
    }
    return best;
  }

  function makeCut(region: Rectangle, cut: CutPosition, kind: CutKind, stage: number): Solved | null {
    const { at, kerf, beforeRegion, afterRegion } = cut;
    const before =
      beforeRegion === null ? null : solve(beforeRegion, cut.before, stage, anyOrder ? null : kind);
    if (before === null && beforeRegion !== null) return null;
    const after = afterRegion === null ? null : solve(afterRegion, cut.after, stage, null);
    if (after === null && afterRegion !== null) return null;
    const own = { earned: 0, cuts: 1, offcuts: 0, misfits: isFavoured(problem.favoured, kind, cut) ? 0 : 1 };
    const score = addScores(own, before?.score ?? nothing, after?.score ?? nothing);
    const sides = { before: before?.node ?? null, after: after?.node ?? null };
    return { node: { kind, region, at, kerf, partsRun: cut.partsRun, ...sides }, score };
  }

  const everything = pieces.map((_, index) => index);
  const answer = solve(problem.workpiece, everything, 0, null);
  // A tree found within the bound is the best of its kind; beyond it, or where a narrowed search finds none, go on.
  if (solved.size > how.most || (answer === null && how.nearEndsOnly)) return 'unfinished';
  return answer?.node ?? null;
}

/** Cuts that do not nest deeper come first: where the first legal tree is taken they are the safer choice. */
function kindsFrom(stage: number): readonly CutKind[] {
  return stage > 0 && stage % 2 === 0 ? ['rip', 'crosscut'] : ['crosscut', 'rip'];
}

/** Whether a side that holds pieces has a size that the fence or stop is set to anyway. */
function isFavoured(favoured: Favoured, kind: CutKind, cut: CutPosition): boolean {
  const sizes = kind === 'crosscut' ? favoured.lengths : favoured.widths;
  const sizeOf = (region: Rectangle | null): number =>
    region === null ? 0 : kind === 'crosscut' ? region.length : region.width;
  return (
    (cut.before.length > 0 && sizes.has(sizeOf(cut.beforeRegion))) ||
    (cut.after.length > 0 && sizes.has(sizeOf(cut.afterRegion)))
  );
}
