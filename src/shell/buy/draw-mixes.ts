import {
  type GradeEstimate,
  type LumberWanted,
  type Mix,
  type MixEstimate,
  type Visit,
  hardestToFind,
  mixEstimate,
  mixesOf,
  toDraw,
  wantedPieces,
} from '../../index.ts';
import type { VisitTask } from './visit-task.ts';

/** Lumber of one thickness with what is known of its grades. */
export interface Graded {
  readonly wanted: LumberWanted;
  readonly grades: readonly GradeEstimate[];
}

/** Draws the visits of tasks, shown to whoever waits. */
export type Draw = (tasks: readonly VisitTask[], what: string) => Promise<Visit[][]>;

/** One visit in so many is drawn to choose among the mixes; the chosen one gets the rest. */
const triedShare = 5;
/** Mixes that are drawn in full: what looks cheapest in few visits may fail in many. */
const mostDrawn = 2;

/**
 * The cheapest mix of two grades for each lumber: all pairs with prices are tried on a part of the visits, then the
 * cheapest two on all of them. null where no pair has prices, or none reaches the chance.
 */
export async function drawMixes(
  lumber: readonly Graded[],
  visits: number,
  seed: number,
  draw: Draw,
): Promise<(MixEstimate | null)[]> {
  const few = Math.ceil(visits / triedShare);
  const candidates = lumber.map(({ wanted, grades }) => {
    const hardest = hardestToFind(
      wantedPieces(wanted.job),
      grades.map((grade) => grade.visits),
    );
    return hardest === null ? [] : mixesOf(grades, hardest);
  });
  const tasks = (mixes: readonly (readonly Mix[])[], from: number, to: number): VisitTask[] =>
    mixes.flatMap((list, at) => list.map((mix) => ({ ...taskOf(lumber[at]!.wanted, mix), seed, from, to })));
  const tried = await draw(tasks(candidates, 0, few), 'mixes of grades');
  let next = 0;
  const ranked = candidates.map((list, at) =>
    list
      .map((mix) => ({ mix, visits: tried[next++]! }))
      .flatMap((one) => estimateOf(one.mix, one.visits, lumber[at]!, lumber.length) ?? [])
      .sort((a, b) => a.cost - b.cost)
      .slice(0, mostDrawn),
  );
  const rest = await draw(tasks(ranked, few, visits), 'the best mixes');
  let place = 0;
  return ranked.map((list, at) => {
    const all = list.map((mix) =>
      estimateOf(mix, [...mix.visits, ...rest[place++]!], lumber[at]!, lumber.length),
    );
    return all.filter((mix) => mix !== null).sort((a, b) => a.cost - b.cost)[0] ?? null;
  });
}

function estimateOf(
  { better, cheaper, hardest }: Mix,
  visits: readonly Visit[],
  { grades }: Graded,
  thicknesses: number,
): MixEstimate | null {
  if (visits.length === 0) return null;
  const prices = new Map(grades.map(({ grade, price }) => [grade, price]));
  return mixEstimate({ better, cheaper, hardest }, prices, visits, thicknesses);
}

function taskOf(
  wanted: LumberWanted,
  { better, cheaper, hardest }: Mix,
): Pick<VisitTask, 'job' | 'lumber' | 'mix'> {
  return { ...toDraw(wanted, cheaper), mix: { first: toDraw(wanted, better).lumber, hardest } };
}
