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

/** States (workpieces at a stage) weighed for the best tree before the search settles for the first legal one. */
const mostStates = 60_000;

/**
 * The guillotine cuts that free all pieces from the workpiece, or null when none obeys the rules.
 *
 * Complete: every cut between two groups of pieces is tried at both ends of the gap between them (and where it
 * leaves a side just long enough to rip), to any depth that `stages` allows, each workpiece solved once per stage.
 * Among legal trees the best by `Score`: offcut money if any, fewest cuts, largest offcuts, repeated settings;
 * ties go to crosscuts before rips and cuts nearer the butt end. Beyond `mostStates` workpieces the first legal
 * tree is taken. Cost: about (number of sub-rectangles) × (cuts in each).
 */
export function cutTree(problem: CutProblem): CutNode | null {
  const everything = problem.pieces.map((_, index) => index);
  const best = search(problem, everything, false);
  if (best !== 'too large') return best;
  const first = search(problem, everything, true);
  return first === 'too large' ? null : first;
}

function search(
  problem: CutProblem,
  everything: readonly number[],
  firstLegal: boolean,
): CutNode | null | 'too large' {
  const { rules, pieces } = problem;
  const solved = new Map<string, Solved | null>();

  function solve(region: Rectangle, inside: readonly number[], stage: number): Solved | null {
    if (inside.length === 0) return leftover(region);
    const only = inside.length === 1 ? pieces[inside[0] as number] : undefined;
    if (only !== undefined && only.length === region.length && only.width === region.width) {
      return { node: { kind: 'piece', region, piece: inside[0] as number }, score: nothing };
    }
    const key = `${region.x},${region.y},${region.length},${region.width},${stage}`;
    const known = solved.get(key);
    if (known !== undefined) return known;
    const answer = bestCut(region, inside, stage);
    solved.set(key, answer);
    return answer;
  }

  function leftover(region: Rectangle): Solved {
    return { node: { kind: 'leftover', region }, score: leftoverScore(region, rules) };
  }

  function bestCut(region: Rectangle, inside: readonly number[], stage: number): Solved | null {
    let best: Solved | null = null;
    for (const kind of kindsFrom(stage)) {
      const next = stageAfter(stage, kind);
      if (rules.stages !== 'any' && next > rules.stages) continue;
      if (kind === 'rip' && region.length < rules.shortestRip) continue;
      for (const cut of cutPositions(problem, kind, region, inside)) {
        if (solved.size > mostStates && !firstLegal) return null;
        const made = makeCut(region, cut, kind, rules.stages === 'any' ? 0 : next);
        if (made !== null && (best === null || isBetter(made.score, best.score))) best = made;
        if (best !== null && firstLegal) return best;
      }
    }
    return best;
  }

  function makeCut(region: Rectangle, cut: CutPosition, kind: CutKind, stage: number): Solved | null {
    const { at, kerf } = cut;
    const before = cut.beforeRegion === null ? null : solve(cut.beforeRegion, cut.before, stage);
    if (before === null && cut.beforeRegion !== null) return null;
    const after = cut.afterRegion === null ? null : solve(cut.afterRegion, cut.after, stage);
    if (after === null && cut.afterRegion !== null) return null;
    const own = { earned: 0, cuts: 1, offcuts: 0, misfits: isFavoured(problem.favoured, kind, cut) ? 0 : 1 };
    const score = addScores(own, before?.score ?? nothing, after?.score ?? nothing);
    const sides = { before: before?.node ?? null, after: after?.node ?? null };
    return { node: { kind, region, at, kerf, partsRun: cut.partsRun, ...sides }, score };
  }

  const answer = solve(problem.workpiece, everything, 0);
  if (solved.size > mostStates && !firstLegal) return 'too large';
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
