import {
  type FaceFinding,
  type GradeOptions,
  type Outcome,
  allOf,
  anyOf,
  faceFinding,
} from './face-finding.ts';
import { type Limit, faceLimits, isHeld, poorFaceLimits } from './limits.ts';
import type { BoardFace, MarkedBoard } from './marked-board.ts';
import { type Grade, type RuledGrade, faceRules, grades, leastBoard } from './rule.ts';

/** Whether a board makes one grade, and all that was looked at for it. */
export interface GradeFinding {
  readonly grade: Grade;
  readonly outcome: Outcome;
  /** False when the whole board is too narrow or too short for the grade; nothing else is looked at then. */
  readonly largeEnough: boolean;
  /** Faces in the order in which they were asked for; empty when the board is too small. */
  readonly faces: readonly FaceFinding[];
  readonly limits: readonly Limit[];
}

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
  const faces = faceCache(board, surfaceMeasure, options);
  for (const grade of grades) {
    const finding = findingFor(board, grade, surfaceMeasure, faces);
    findings.push(finding);
    if (finding.outcome === 'met') return { grade, findings };
  }
  return { grade: null, findings };
}

/** Whether a board makes one given grade or better is not asked here: only that grade's own rules. */
export function gradeFinding(
  board: MarkedBoard,
  grade: Grade,
  surfaceMeasure: number,
  options: GradeOptions = tallyEffort,
): GradeFinding {
  return findingFor(board, grade, surfaceMeasure, faceCache(board, surfaceMeasure, options));
}

type FaceLook = (face: BoardFace, grade: RuledGrade, forSelects?: boolean) => FaceFinding;

/** The same face under the same rule is asked for by several grades; it is searched once. */
function faceCache(board: MarkedBoard, surfaceMeasure: number, options: GradeOptions): FaceLook {
  const known = new Map<string, FaceFinding>();
  return (face, grade, forSelects = false) => {
    const key = `${face} ${grade} ${forSelects}`;
    const found =
      known.get(key) ?? faceFinding(board, face, faceRules.get(grade)!, surfaceMeasure, options, forSelects);
    known.set(key, found);
    return found;
  };
}

function findingFor(board: MarkedBoard, grade: Grade, surfaceMeasure: number, look: FaceLook): GradeFinding {
  const least = leastBoard.get(grade)!;
  if (board.width < least.width || board.length < least.length) {
    return { grade, outcome: 'not met', largeEnough: false, faces: [], limits: [] };
  }
  if (grade === 'F1F' || grade === 'Selects') {
    const small = grade === 'Selects' && surfaceMeasure <= 3;
    const either = (['A', 'B'] as const).map((face) =>
      betterFace(board, grade, face, surfaceMeasure, small, look),
    );
    return either.find(({ outcome }) => outcome === 'met') ?? mostOf(either);
  }
  if (grade === '3A') return threeA(look);
  const faces = (['A', 'B'] as const).map((face) => look(face, grade));
  const limits =
    grade === 'FAS' ? (['A', 'B'] as const).flatMap((face) => faceLimits(board, face, surfaceMeasure)) : [];
  return together(grade, faces, limits);
}

/** F1F or Selects with the given face as the better one. */
function betterFace(
  board: MarkedBoard,
  grade: Grade,
  face: BoardFace,
  surfaceMeasure: number,
  small: boolean,
  look: FaceLook,
): GradeFinding {
  const poor = face === 'A' ? 'B' : 'A';
  const faces = small ? [look(face, 'FAS', true)] : [look(face, 'FAS'), look(poor, '1C')];
  const limits = [...faceLimits(board, face, surfaceMeasure), ...poorFaceLimits(board, poor)];
  return together(grade, faces, limits);
}

/** 3A: both faces 3A, or one face 2A (the backs of its cuttings are sound, as of all clear cuttings). */
function threeA(look: FaceLook): GradeFinding {
  const faces = (['A', 'B'] as const).map((face) => look(face, '3A'));
  const outcome = allOf(faces.map((face) => face.outcome));
  if (outcome === 'met') return { grade: '3A', outcome, largeEnough: true, faces, limits: [] };
  const better = (['A', 'B'] as const).map((face) => look(face, '2A'));
  const best = better.find((face) => face.outcome === 'met');
  if (best !== undefined)
    return { grade: '3A', outcome: 'met', largeEnough: true, faces: [best], limits: [] };
  return {
    grade: '3A',
    outcome: anyOf([outcome, ...better.map((face) => face.outcome)]),
    largeEnough: true,
    faces,
    limits: [],
  };
}

function together(grade: Grade, faces: readonly FaceFinding[], limits: readonly Limit[]): GradeFinding {
  const held = limits.every(isHeld);
  const outcome = allOf([...faces.map((face) => face.outcome), held ? 'met' : 'not met']);
  return { grade, outcome, largeEnough: true, faces, limits };
}

/** Of findings that are not met, the one nearer to it: an open one before a failed one, then the more area found. */
function mostOf(findings: readonly GradeFinding[]): GradeFinding {
  const found = ({ faces }: GradeFinding): number =>
    faces.reduce((sum, { tried }) => sum + Math.max(0, ...tried.map((way) => way.found)), 0);
  const open = findings.filter(({ outcome }) => outcome === 'not shown');
  const among = open.length > 0 ? open : findings;
  return among.reduce((best, finding) => (found(finding) > found(best) ? finding : best));
}
