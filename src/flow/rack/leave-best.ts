import type { BoardPattern, Choice } from '../choice/choice.ts';
import { boardCutter, favouredSettings, type OffcutWorth } from '../cuts/cut-board.ts';
import type { Job } from '../stock/job.ts';
import { rearrangements } from './rearrangements.ts';

/** Larger boards are left as the solver laid them: few arrangements of many pieces are cut as cheaply as its own. */
const mostPieces = 10;

/** What a way to lay one board's pieces comes to, in the order in which it counts. */
interface Outcome {
  /** Square ticks of offcuts where they earn money back, else 0: more is better. */
  readonly earned: number;
  /** Fewer is better. */
  readonly cuts: number;
  /** What the offcuts are good for: more is better. */
  readonly worth: number;
}

/**
 * The same choice of boards and of pieces on each, the pieces laid so that what is left is of the most use: among
 * arrangements of equal cost, first the fewest cuts, then the most useful offcuts (DESIGN, section 7: ties go to fewer
 * setups, then to the offcuts). A board keeps its arrangement unless another one is strictly better. Boards with a run,
 * whose bevels need one another, stay as they are.
 */
export function leaveBest(job: Job, choice: Choice, worth: OffcutWorth): Choice {
  const favoured = favouredSettings(choice.patterns.flatMap(({ pieces }) => pieces));
  const cut = boardCutter(job, favoured, worth);
  const outcomeOf = (pattern: BoardPattern): Outcome | null => {
    const made = cut(pattern);
    if (made === null) return null;
    const area = made.offcuts.reduce((sum, { length, width }) => sum + length * width, 0);
    const earns = job.shop.goal === 'least cost' && job.shop.offcutCredit > 0;
    return {
      earned: earns ? area : 0,
      cuts: made.cuts.length,
      worth: made.offcuts.reduce((sum, offcut) => sum + worth(made.board, offcut), 0),
    };
  };
  return { ...choice, patterns: choice.patterns.map((pattern) => best(job, pattern, outcomeOf)) };
}

function best(
  job: Job,
  pattern: BoardPattern,
  outcomeOf: (pattern: BoardPattern) => Outcome | null,
): BoardPattern {
  const { pieces } = pattern;
  if (pieces.length > mostPieces || pieces.some(({ run }) => run !== undefined)) return pattern;
  let found = { pattern, outcome: outcomeOf(pattern) };
  for (const other of rearrangements(job, pattern)) {
    const outcome = outcomeOf(other);
    if (outcome !== null && (found.outcome === null || isBetter(outcome, found.outcome)))
      found = { pattern: other, outcome };
  }
  return found.pattern;
}

function isBetter(a: Outcome, b: Outcome): boolean {
  if (a.earned !== b.earned) return a.earned > b.earned;
  if (a.cuts !== b.cuts) return a.cuts < b.cuts;
  return a.worth > b.worth;
}
