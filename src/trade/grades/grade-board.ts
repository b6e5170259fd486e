import { type GradeOptions, type Outcome, anyOf } from './face-finding.ts';
import { type GradeFinding, findingFor, gradeLook } from './grade-finding.ts';
import type { MarkedBoard } from './marked-board.ts';
import { type Grade, grades } from './rule.ts';

/** A board's grade by its marked defects, and the findings that lead there, best grade first. */
export interface BoardGrade {
  /** The best grade that is met; null: below No. 3B Common. */
  readonly grade: Grade | null;
  /** Every grade down to the one met. */
  readonly findings: readonly GradeFinding[];
}

/** Effort enough to prove most boards of up to a dozen defects; a tally of a rack stays quick. */
export const tallyEffort: GradeOptions = { effort: 4000, aim: 'most' };

/**
 * The grade that a board's marked defects meet under the published standard rules for hardwood lumber.
 * An opinion for planning: a certified inspector grades lumber.
 *
 * FAS, 1C, 2A, 2B, 3B: from the poor face, so both faces must make it. F1F and Selects: the better face FAS, the poor
 * one 1C (Selects of 2 and 3 ft SM: the better face alone). 3A: the poor face, or a better face of 2A (from memory).
 * A grade that could not be shown counts as not met, and says so in its finding.
 * @param surfaceMeasure whole square feet, as tallied (exact halves go up and down by turns, so it is an argument)
 * Source: TRADE 2.3.
 */
export function gradeBoard(
  board: MarkedBoard,
  surfaceMeasure: number,
  options: GradeOptions = tallyEffort,
): BoardGrade {
  const findings: GradeFinding[] = [];
  const look = gradeLook(board, surfaceMeasure, options);
  for (const grade of grades) {
    const finding = findingFor(grade, look);
    findings.push(finding);
    if (finding.outcome === 'met') return { grade, findings };
  }
  return { grade: null, findings };
}

/**
 * Whether the grader gives a board one of the grades asked for, and surely so: it makes one of them, and every better
 * grade is proven not met. The asked grades are looked at first, so a wrong board is found out early.
 * @param asked neighbours in the order of grades, not empty
 */
export function isSurely(
  board: MarkedBoard,
  asked: readonly Grade[],
  surfaceMeasure: number,
  options: GradeOptions,
): boolean {
  const look = gradeLook(board, surfaceMeasure, options);
  const outcome = (grade: Grade): Outcome => findingFor(grade, look).outcome;
  if (anyOf(asked.map(outcome)) !== 'met') return false;
  const better = grades.slice(0, Math.min(...asked.map((grade) => grades.indexOf(grade))));
  return better.every((grade) => outcome(grade) === 'not met');
}

/** Whether a board makes one given grade by that grade's own rules; better grades are not looked at. */
export function gradeFinding(
  board: MarkedBoard,
  grade: Grade,
  surfaceMeasure: number,
  options: GradeOptions = tallyEffort,
): GradeFinding {
  return findingFor(grade, gradeLook(board, surfaceMeasure, options));
}
