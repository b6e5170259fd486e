import { type Steps, within } from '../../flow/choice/progress.ts';
import type { Layout } from '../../flow/cuts/layout.ts';
import { rackBoardsOf } from '../../flow/rack/rack-note.ts';
import { withoutRack } from '../../flow/rack/stock-for-job.ts';
import type { Job } from '../../flow/stock/job.ts';
import type { CheckedLayout } from '../../pipeline.ts';
import {
  type FaceTable,
  type LayOutSteps,
  type Solved,
  type TriedFace,
  faceTable,
  tryFace,
} from './face-table.ts';
import type { Focus } from './focus.ts';
import type { Hindrance } from './hindrance.ts';
import { premiumLines, wishLines } from './layout-face.ts';
import { pickFace } from './pick-face.ts';
import type { FaceWish } from './wish.ts';

/** The face that a layout is to show: the one asked for, or the best look within a share of the cheapest plan's cost. */
export type FaceOfLayout =
  | { readonly kind: 'asked'; readonly focus: Focus; readonly wish: FaceWish }
  | { readonly kind: 'within premium'; readonly focus: Focus; readonly premium: number };

/** A job laid out with all that its sheet says; or why the face asked for is not to be had. */
export type LayoutAnswer = LaidAnswer | { readonly kind: 'cannot'; readonly why: Hindrance };

interface LaidAnswer {
  readonly kind: 'laid';
  /** The job as it was asked for: pinned to the face it shows. How its runs were broken says `checked.job`. */
  readonly job: Job;
  /** What is to be said of that face. */
  readonly lines: readonly string[];
  readonly checked: CheckedLayout;
  /** Where pieces of the rack are used: the job laid out without them, to compare. Null where it was ended before. */
  readonly bare: Layout | null;
}

/**
 * Everything a layout of a job asks of the solver, one after another: the face to show, the layout, and what it would
 * be without the rack.
 * @param stop turns true once when it should end: then it does so with what there is
 */
export function* layoutAnswer(
  job: Job,
  face: FaceOfLayout | null,
  solve: LayOutSteps,
  stop: () => boolean,
): Steps<LayoutAnswer> {
  const laid = yield* facedLayout(job, face, solve, stop);
  if (laid.kind === 'cannot' || rackBoardsOf(laid.job, laid.checked.layout).length === 0 || stop())
    return laid;
  const { layout, faults } = yield* within(solve(withoutRack(laid.job)), () => laid);
  // What was ended early compares with nothing.
  return { ...laid, bare: faults.length === 0 && !stop() ? layout : null };
}

function facedLayout(
  job: Job,
  face: FaceOfLayout | null,
  solve: LayOutSteps,
  stop: () => boolean,
): Steps<LayoutAnswer> {
  switch (face?.kind) {
    case undefined:
      return laidOut(job, [], solve);
    case 'asked':
      return onFace(job, face, solve);
    case 'within premium':
      return withinPremium(job, face, solve, stop);
  }
}

function laidBy(job: Job, lines: readonly string[], checked: CheckedLayout): LaidAnswer {
  return { kind: 'laid', job, lines, checked, bare: null };
}

/** The layout of a job that shows what it shows. */
function* laidOut(job: Job, lines: readonly string[], solve: LayOutSteps): Steps<LaidAnswer> {
  const steps = within(solve(job), (checked) => (checked === null ? null : laidBy(job, lines, checked)));
  return laidBy(job, lines, yield* steps);
}

/** A layout that came with the choice of a face: sound, as no other is chosen. */
function chosen({ job, laid, layout }: Solved, lines: readonly string[]): LaidAnswer {
  return laidBy(job, lines, { job: laid, layout, faults: [] });
}

function* onFace(
  job: Job,
  { focus, wish }: FaceOfLayout & { kind: 'asked' },
  solve: LayOutSteps,
): Steps<LayoutAnswer> {
  const board = job.boards.find(({ name }) => name === wish.board)!;
  const laid = ({ solved }: TriedFace): LaidAnswer => chosen(solved, wishLines(job, focus, wish));
  const trying = tryFace(job, focus, board, wish.face, solve, 'the face asked for');
  const found = yield* within(trying, (tried) => (tried === null ? null : laid(tried)));
  return found.kind === 'impossible' ? { kind: 'cannot', why: found.why } : laid(found);
}

function* withinPremium(
  job: Job,
  { focus, premium }: FaceOfLayout & { kind: 'within premium' },
  solve: LayOutSteps,
  stop: () => boolean,
): Steps<LayoutAnswer> {
  const pick = (table: FaceTable): LaidAnswer | null => {
    const choice = pickFace(table, premium);
    return choice === null ? null : chosen(choice, premiumLines(table, choice, premium));
  };
  const soFar = (table: FaceTable | null): LaidAnswer | null =>
    table === null ? null : (pick(table) ?? chosen(table.plan, []));
  const table = yield* within(faceTable(job, focus, solve, stop), soFar);
  const best = pick(table);
  if (best !== null) return best;
  return stop() ? chosen(table.plan, []) : yield* laidOut(job, [], solve);
}
