import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { type CuttingAnswer, bestCuttings } from './best-cuttings.ts';
import { cuttingUnit } from './cutting-size.ts';
import { type BoardFace, type MarkedBoard, blockedOn } from './marked-board.ts';
import { type Way, fullWidthSize, waysToMake } from './requirement.ts';
import type { FaceRule, RuleName } from './rule.ts';

/** `not shown`: the search ran out of effort before it found enough, or a proof that there is not enough. */
export type Outcome = 'met' | 'not met' | 'not shown';

/** One way to make the grade, tried on a face. */
export interface WayTried {
  readonly way: Way;
  /** Square ticks of cuttings wanted; hundredths of a unit make it whole only when multiplied by 100, so × 100. */
  readonly neededTimes100: number;
  readonly cuttings: readonly Rectangle[];
  /** Square ticks found. */
  readonly found: number;
  /** Square ticks that no choice of cuttings can pass; equal to `found` when that is proven the most. */
  readonly bound: number;
  readonly outcome: Outcome;
}

/** What one face yields under one grade's cutting rule. */
export interface FaceFinding {
  readonly face: BoardFace;
  readonly rule: RuleName;
  readonly tried: readonly WayTried[];
  readonly outcome: Outcome;
}

/** How a face is looked into: `most` finds the largest area; `enough` stops as soon as the grade is made. */
export interface GradeOptions {
  /** Nodes of one cutting search. */
  readonly effort: number;
  readonly aim: 'most' | 'enough';
}

/**
 * Tries the ways to make a grade on one face. With the aim `enough` it stops at the first that suffices.
 * @param surfaceMeasure whole square feet, as tallied
 */
export function faceFinding(
  board: MarkedBoard,
  face: BoardFace,
  rule: FaceRule,
  surfaceMeasure: number,
  options: GradeOptions,
): FaceFinding {
  const { length, width } = board;
  const tried: WayTried[] = [];
  for (const way of waysToMake(rule, { surfaceMeasure, length, width })) {
    tried.push(tryWay(board, face, rule, way, options));
    if (options.aim === 'enough' && tried.at(-1)!.outcome === 'met') break;
  }
  return { face, rule: rule.name, tried, outcome: anyOf(tried.map(({ outcome }) => outcome)) };
}

/** Met when one is; else not shown when one is open; else not met. */
export function anyOf(outcomes: readonly Outcome[]): Outcome {
  if (outcomes.includes('met')) return 'met';
  return outcomes.includes('not shown') ? 'not shown' : 'not met';
}

/** Not met when one is not; else not shown when one is open; else met. */
export function allOf(outcomes: readonly Outcome[]): Outcome {
  if (outcomes.includes('not met')) return 'not met';
  return outcomes.includes('not shown') ? 'not shown' : 'met';
}

function tryWay(
  board: MarkedBoard,
  face: BoardFace,
  rule: FaceRule,
  way: Way,
  options: GradeOptions,
): WayTried {
  const whole: Rectangle = { x: 0, y: 0, length: board.length, width: board.width };
  const blocked = blockedOn(board.defects, face, rule.cuttings);
  const task = { board: whole, blocked, size: rule.cutting, atMost: Infinity };
  if (way.kind === 'clear face') {
    const size = { leastSizes: [{ width: board.width, length: board.length }], leastArea: 0 };
    const answer = bestCuttings({ ...task, size, atMost: 1 }, options.effort);
    return judged(way, 100 * board.length * board.width, answer);
  }
  const needed = way.hundredthsOfUnit * cuttingUnit;
  const size = way.kind === 'full width' ? fullWidthSize(board.width) : rule.cutting;
  const search = { ...task, size, atMost: way.atMost };
  const enough = Math.ceil(needed / 100);
  if (options.aim === 'enough') return judged(way, needed, bestCuttings(search, options.effort, enough));
  const most = judged(way, needed, bestCuttings(search, options.effort));
  if (most.outcome !== 'not shown') return most;
  return judged(way, needed, bestCuttings(search, options.effort, enough));
}

function judged(way: Way, neededTimes100: number, { cuttings, area, bound }: CuttingAnswer): WayTried {
  const outcome =
    area * 100 >= neededTimes100 ? 'met' : bound * 100 < neededTimes100 ? 'not met' : 'not shown';
  return { way, neededTimes100, cuttings, found: area, bound, outcome };
}
