import type { CheckProblem } from '../../flow/check/fault.ts';
import { verify } from '../../flow/check/verify.ts';
import { type Progress, type Steps, retold, within } from '../../flow/choice/progress.ts';
import { breakWays, rankOf } from '../../flow/choice/runs/break-way.ts';
import { partValue, provenBy } from '../../flow/cuts/goal-value.ts';
import type { LaidPiece, Layout } from '../../flow/cuts/layout.ts';
import type { RunGroups } from '../../flow/plan/run-break.ts';
import type { Board } from '../../flow/stock/board.ts';
import { blocks } from '../../flow/stock/clear.ts';
import type { Face } from '../../flow/stock/defect.ts';
import type { Job } from '../../flow/stock/job.ts';
import type { CheckedLayout } from '../../pipeline.ts';
import { hindranceOn } from './carry.ts';
import type { Focus } from './focus.ts';
import type { Hindrance } from './hindrance.ts';
import { lookMeasure, welcomeInView } from './measure.ts';
import { pinnedJob } from './pinned-job.ts';
import { unbeaten } from './unbeaten.ts';
import { type Unrolled, unroll } from './unrolled.ts';

/** Lays a job out and checks it: the real pipeline, or a stand-in of the tests. */
export type LayOutSteps = (job: Job) => Steps<CheckedLayout>;

/** One face of one board, and what choosing it means. */
export type FaceChoice = PossibleFace | ImpossibleFace | UntriedFace;

interface OneFace {
  readonly board: string;
  readonly face: Face;
  /** As the maker gave it, 0 to 10. */
  readonly look: number;
}

export interface ImpossibleFace extends OneFace {
  readonly kind: 'impossible';
  readonly why: Hindrance;
}

/** It was ended before this face was looked at. */
export interface UntriedFace extends OneFace {
  readonly kind: 'untried';
}

/** The lead pinned to a face, laid out. Under `most value` its worth is without the lead's bonus. */
export interface PossibleFace extends OneFace, Solved {
  readonly kind: 'possible';
  /** Look, with the favour of what is welcome in view. */
  readonly measure: number;
  readonly welcome: number;
  /** The stretches of the run; one: its grain runs on whole. */
  readonly groups: RunGroups;
  /** Whether no run is broken in a worse way than in the cheapest plan. */
  readonly keepsGrain: boolean;
  readonly unrolled: Unrolled;
  /** What it costs (under `most value`: loses) beyond the cheapest plan; below 0 where a broken run comes cheaper. */
  readonly extra: number;
  /** Board feet more than the cheapest plan takes. */
  readonly moreFeet: number;
  /** Whether no other choice beats it on both look and cost. */
  readonly isUnbeaten: boolean;
}

/** Every face for the lead, in the order of the boards, and the plan they are held against. */
export interface FaceTable {
  readonly job: Job;
  readonly focus: Focus;
  /** The cheapest plan with the runs broken no further than the boards make it. */
  readonly plan: Solved & { readonly groups: RunGroups };
  readonly choices: readonly FaceChoice[];
}

/** A job's layout, and what it comes to. */
export interface Solved {
  /** As it was asked for, and as it was laid out, its runs broken where they had to be. */
  readonly job: Job;
  readonly laid: Job;
  readonly layout: Layout;
  readonly value: number;
  readonly bound: number | null;
  readonly proven: boolean;
}

/** A face that could carry the lead, laid out. */
export interface TriedFace extends OneFace {
  readonly kind: 'tried';
  readonly solved: Solved;
}

type Tried = ImpossibleFace | UntriedFace | TriedFace;

/**
 * Tries the lead on every face of every board: one layout for each that could carry it, with that pin.
 * @param solve lays out one job; a layout with a fault is a bug and thrown
 * @param stop turns true once when it should end: the faces still to come are left untried
 */
export function* faceTable(
  job: Job,
  focus: Focus,
  solve: LayOutSteps,
  stop: () => boolean = () => false,
): Steps<FaceTable> {
  const base = yield* within(solved(job, solve, 'the cheapest plan'), (found) =>
    found === null ? null : compared(job, focus, found, untriedFrom(job, 0)),
  );
  const tried: Tried[] = [];
  const soFar = (): FaceTable => compared(job, focus, base, [...tried, ...untriedFrom(job, tried.length)]);
  const count = 2 * job.boards.length;
  for (const board of job.boards) {
    for (const face of ['A', 'B'] as const) {
      if (stop()) return soFar();
      const doing = `face ${tried.length + 1} of ${count}`;
      const twin = tried[tried.length - 1];
      if (face === 'B' && twin?.kind === 'tried' && isAlike(job, focus, board))
        tried.push(turned(twin, job, focus, board));
      else {
        const found = yield* within(tryFace(job, focus, board, face, solve, doing), soFar);
        // Short because it was ended early says nothing of the face.
        if (stop() && found.kind === 'tried' && shortCopies(found.solved.layout) > 0) return soFar();
        tried.push(found);
      }
    }
  }
  return soFar();
}

/** The faces from a number on, board by board: not looked at. */
function untriedFrom({ boards }: Job, first: number): UntriedFace[] {
  const all = boards.flatMap((board) =>
    (['A', 'B'] as const).map((face): UntriedFace => ({
      kind: 'untried',
      board: board.name,
      face,
      look: lookOf(board, face),
    })),
  );
  return all.slice(first);
}

/** The lead on one face, laid out. */
export function* tryFace(
  job: Job,
  focus: Focus,
  board: Board,
  face: Face,
  solve: LayOutSteps,
  doing: string,
): Generator<Progress<TriedFace>, TriedFace | ImpossibleFace, void> {
  const one = { board: board.name, face, look: lookOf(board, face) };
  const why = hindranceOn(job, focus, board, face);
  if (why !== null) return { kind: 'impossible', ...one, why };
  const tried = (found: Solved): TriedFace => ({ kind: 'tried', ...one, solved: found });
  const steps = solvedWithLead(pinnedJob(job, focus, one), focus, solve, doing);
  return tried(yield* within(steps, (found) => found && tried(found)));
}

/** The stretches in which a layout has the run in focus; one: its grain runs on whole. */
function groupsOf(job: Job, focus: Focus, { broken = [] }: Layout): RunGroups {
  const { run } = job.parts[focus.lead]!;
  const names = focus.members.map((index) => job.parts[index]!.name);
  return broken.find((one) => one.run === run)?.stretches ?? [names];
}

function lookOf(board: Board, face: Face): number {
  return face === 'A' ? board.lookA : board.lookB;
}

function* solved(job: Job, solve: LayOutSteps, doing: string): Steps<Solved> {
  const solvedBy = ({ job: laid, layout, faults }: CheckedLayout): Solved => {
    if (faults.length > 0) throw new Error(unsound(faults));
    const { value, bound, proven } = layout.proof;
    return { job, laid, layout, value, bound, proven };
  };
  const steps = within(solve(job), (found) => (found === null ? null : solvedBy(found)));
  return solvedBy(yield* retold(steps, (said) => ({ ...said, doing: `${doing}: ${said.doing}` })));
}

/** The layout, checked once more. @throws Error when the check finds anything: such a layout is never shown */
function sound(job: Job, layout: Layout): Layout {
  const faults = verify(job, layout);
  if (faults.length > 0) throw new Error(unsound(faults));
  return layout;
}

function unsound(faults: readonly CheckProblem[]): string {
  return `a layout failed its own check (${faults[0]?.kind ?? ''})`;
}

/** Under `most value` the lead might be left out: it is made worth more than all else, and that bonus taken off again. */
function* solvedWithLead(job: Job, focus: Focus, solve: LayOutSteps, doing: string): Steps<Solved> {
  if (job.shop.goal === 'least cost') return yield* solved(job, solve, doing);
  const all = 1 + job.parts.reduce((sum, part) => sum + part.quantity * partValue(part), 0);
  const parts = job.parts.map((part, index) =>
    index === focus.lead ? { ...part, value: partValue(part) + all } : part,
  );
  const lessBonus = ({ laid, layout: found }: Solved): Solved => {
    const bonus = all * laidCopies(found, job.parts[focus.lead]!.name);
    const known = { ...found.proof, bound: (found.proof.bound ?? Infinity) - bonus, gap: 0 };
    const proof = {
      ...found.proof,
      ...provenBy(job, found.boards, { patterns: [], short: [], proof: known }),
    };
    const { value, bound, proven } = proof;
    return { job, laid, layout: { ...found, proof }, value, bound, proven };
  };
  const steps = solved({ ...job, parts }, solve, doing);
  return lessBonus(yield* within(steps, (found) => (found === null ? null : lessBonus(found))));
}

function laidCopies({ boards }: Layout, part: string): number {
  return new Set(boards.flatMap(({ pieces }) => pieces).flatMap((p) => (p.part === part ? [p.copy] : [])))
    .size;
}

function shortCopies({ short }: Layout): number {
  return short.reduce((sum, { copies }) => sum + copies, 0);
}

/** Whether both faces of a board leave all members of the run the same room: then one layout does for both. */
function isAlike(job: Job, focus: Focus, board: Board): boolean {
  return focus.members.every((index) => {
    const part = job.parts[index]!;
    return (
      part.pin === null &&
      board.defects.every((defect) => blocks(part, defect, 'A') === blocks(part, defect, 'B'))
    );
  });
}

/** The same layout with the stretch of the lead showing face B. */
function turned(twin: TriedFace, job: Job, focus: Focus, board: Board): Tried {
  const { solved: found } = twin;
  const groups = groupsOf(job, focus, found.layout);
  const lead = job.parts[focus.lead]!.name;
  const names = groups.find((group) => group.includes(lead)) ?? [];
  const turn = (piece: LaidPiece): LaidPiece =>
    names.includes(piece.part) ? { ...piece, showFace: 'B' } : piece;
  const boards = found.layout.boards.map((laid) =>
    laid.board === board.name ? { ...laid, pieces: laid.pieces.map(turn) } : laid,
  );
  const pinned = pinnedJob(job, focus, { board: board.name, face: 'B' });
  const layout = { ...found.layout, boards };
  return {
    ...twin,
    face: 'B',
    look: board.lookB,
    solved: { ...found, job: pinned, layout: sound(pinned, layout) },
  };
}

function compared(job: Job, focus: Focus, base: Solved, tried: readonly Tried[]): FaceTable {
  const sign = job.shop.goal === 'most value' ? -1 : 1;
  const ways = breakWays(job);
  const rank = ({ layout }: Solved): number =>
    job.shop.breakGrain === null ? rankOf(ways, layout.broken ?? []) : 0;
  const all = tried.flatMap((one) => (one.kind === 'tried' ? [one.solved] : []));
  const plan = all.reduce((best, other) => {
    const apart = shortCopies(other.layout) - shortCopies(best.layout) || rank(other) - rank(best);
    return apart < 0 || (apart === 0 && sign * other.value < sign * best.value - 1e-9) ? other : best;
  }, base);
  const choices = tried.map((one): FaceChoice => {
    if (one.kind !== 'tried') return one;
    const why = shortfall(one.solved, focus, plan);
    const { board, face, look } = one;
    if (why !== null) return { kind: 'impossible', board, face, look, why };
    const { layout } = one.solved;
    const groups = groupsOf(job, focus, layout);
    const unrolled = unroll(one.solved.job, layout, focus);
    const welcome = welcomeInView(unrolled);
    return {
      kind: 'possible',
      ...{ board, face, look, groups, unrolled, welcome, ...one.solved },
      measure: lookMeasure(look, welcome),
      keepsGrain: rank(one.solved) <= rank(plan),
      extra: sign * (one.solved.value - plan.value),
      moreFeet: layout.totals.boardFeet - plan.layout.totals.boardFeet,
      isUnbeaten: false,
    };
  });
  const possible = choices.filter((choice) => choice.kind === 'possible');
  const marks = unbeaten(possible);
  return {
    job,
    focus,
    plan: { ...plan, groups: groupsOf(job, focus, plan.layout) },
    choices: choices.map((choice) =>
      choice.kind === 'possible' ? { ...choice, isUnbeaten: marks[possible.indexOf(choice)]! } : choice,
    ),
  };
}

/** Why a layout that was tried is no choice: it lacks some of the lead, or more of the rest than the plan lacks. */
function shortfall({ job, layout, proven }: Solved, focus: Focus, plan: Solved): Hindrance | null {
  const lead = job.parts[focus.lead]!;
  if (laidCopies(layout, lead.name) < lead.quantity) return { kind: 'not laid out', proven };
  if (job.shop.goal === 'most value' || shortCopies(layout) <= shortCopies(plan.layout)) return null;
  return { kind: 'rest is short', parts: layout.short.map(({ part }) => part), proven };
}
