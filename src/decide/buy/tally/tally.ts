import type { Steps } from '../../../flow/choice/progress.ts';
import type { Job } from '../../../flow/stock/job.ts';
import type { Board } from '../../../flow/stock/board.ts';
import { boardFeet, surfaceMeasures, yardFeet } from '../../../trade/board-feet.ts';
import { type BoardGrade, gradeBoard, gradeFinding } from '../../../trade/grades/grade-board.ts';
import type { GradeFinding } from '../../../trade/grades/grade-finding.ts';
import { readGrade } from '../../../trade/grades/read-grade.ts';
import { type Grade, grades } from '../../../trade/grades/rule.ts';

/** One row of a tally: all copies of a board. */
export interface TallyRow {
  readonly board: Board;
  readonly from: 'boards' | 'yard' | 'rack';
  /** Surface measure of each copy, whole square feet; an exact half goes down and up by turns over the tally. */
  readonly surfaceMeasures: readonly number[];
  /** Board feet of all copies as a yard charges for them: surface measures × nominal thickness. */
  readonly boardFeet: number;
  /** Board feet that all copies really measure, not rounded. */
  readonly measuredBoardFeet: number;
  /** Price of all copies. */
  readonly price: number;
  readonly claim: Claim;
  /** The grade that the marked defects meet, for the first copy. */
  readonly grade: BoardGrade;
}

/** What a yard says of a board's grade, and whether its marked defects bear that out. */
export type Claim =
  | { readonly kind: 'none' }
  | { readonly kind: 'not a standard grade'; readonly text: string }
  | {
      readonly kind: 'met' | 'better' | 'not met' | 'not shown';
      readonly text: string;
      readonly grade: Grade;
      readonly finding: GradeFinding;
    };

/**
 * The tally of a job's boards and of its yard: what they measure, and the grade their marked defects meet. Each list is
 * tallied on its own, so each starts with a half going down.
 */
export function* tally(job: Job, yard: readonly Board[]): Generator<TallyRow, void, void> {
  const own = job.boards.map(
    (board) => ({ board, from: board.origin === 'rack' ? 'rack' : 'boards' }) as const,
  );
  yield* tallyList(own);
  yield* tallyList(yard.map((board) => ({ board, from: 'yard' }) as const));
}

/** A tally in steps, one for each board. @param stop turns true once when it should end with the boards graded by then */
export function* tallySteps(job: Job, yard: readonly Board[], stop: () => boolean): Steps<TallyRow[]> {
  const rows: TallyRow[] = [];
  const count = job.boards.length + yard.length;
  const doing = (): string => `grading board ${rows.length + 1} of ${count}`;
  yield { doing: doing(), value: null, bound: null };
  for (const row of tally(job, yard)) {
    rows.push(row);
    if (rows.length === count || stop()) break;
    yield { doing: doing(), value: null, bound: null, soFar: () => rows };
  }
  return rows;
}

function* tallyList(list: readonly Pick<TallyRow, 'board' | 'from'>[]): Generator<TallyRow, void, void> {
  const copies = list.flatMap(({ board }) => Array.from({ length: board.quantity }, () => board));
  const measures = surfaceMeasures(copies);
  let next = 0;
  for (const { board, from } of list) {
    const own = measures.slice(next, next + board.quantity);
    next += board.quantity;
    yield rowOf(board, from, own);
  }
}

function rowOf(board: Board, from: TallyRow['from'], measures: readonly number[]): TallyRow {
  const [measure = 0] = measures;
  const grade = gradeBoard(board, measure);
  const perCopy = boardFeet(board.length, board.width, board.nominalInches);
  return {
    board,
    from,
    surfaceMeasures: measures,
    boardFeet: yardFeet(board.length, board.width, board.nominalInches, measures) * board.quantity,
    measuredBoardFeet: perCopy * board.quantity,
    price: board.cost * board.quantity,
    claim: claimOf(board, measure, grade),
    grade,
  };
}

function claimOf(board: Board, measure: number, met: BoardGrade): Claim {
  const text = board.grade.trim();
  if (text === '') return { kind: 'none' };
  const grade = readGrade(text);
  if (grade === null) return { kind: 'not a standard grade', text };
  const finding =
    met.findings.find((candidate) => candidate.grade === grade) ?? gradeFinding(board, grade, measure);
  const rank = (of: Grade | null): number => (of === null ? grades.length : grades.indexOf(of));
  const kind =
    rank(met.grade) < rank(grade) ? 'better' : rank(met.grade) === rank(grade) ? 'met' : finding.outcome;
  return { kind, text, grade, finding };
}
