import {
  type FaceOfLayout,
  type Focus,
  type FocusProblem,
  type Job,
  type Result,
  type WishProblem,
  focusOf,
  readWish,
} from '../../index.ts';
import { quoted } from '../wording.ts';
import { exitCodes, exitWith } from './end.ts';
import type { World } from './world.ts';

/**
 * The face a layout is to show: the one asked for (`--face BOARD:FACE`), else the best look within the shop's face premium;
 * null where nothing asks for one. Ends the command when what was asked for is not understood.
 */
export function faceOfLayout(job: Job, asked: string | undefined, world: World): FaceOfLayout | null {
  const premium = job.shop.facePremium;
  if (asked !== undefined) {
    const focus = orRefuse(focusOf(job, null), focusWords, world);
    return { kind: 'asked', focus, wish: orRefuse(readWish(asked, job), wishWords, world) };
  }
  const focus = focusOf(job, null);
  const isSeen = focus.ok && (job.parts[focus.value.lead]?.show ?? 0) > 0;
  return premium > 0 && isSeen ? { kind: 'within premium', focus: focus.value, premium } : null;
}

/** What is looked at; or the end of the command. */
export function focusOrEnd(job: Job, part: string | null, world: World): Focus {
  return orRefuse(focusOf(job, part), focusWords, world);
}

function focusWords(problem: FocusProblem): readonly [string, string] {
  if (problem.kind === 'no parts') return ['the job has no part to show', 'list parts in parts.csv'];
  const { name, nearest } = problem;
  return [
    `the job has no part ${quoted(name)}`,
    nearest === null ? 'see parts.csv' : `did you mean ${quoted(nearest)}?`,
  ];
}

function wishWords(problem: WishProblem): readonly [string, string] {
  if (problem.kind === 'no face named')
    return ['--face names a board and its face', 'write it as C1:A or C1:B'];
  const { board, nearest } = problem;
  return [
    `the job has no board ${quoted(board)}`,
    nearest === null ? 'list it in boards.csv' : `did you mean ${quoted(nearest)}?`,
  ];
}

function orRefuse<T, P extends FocusProblem | WishProblem>(
  result: Result<T, P>,
  words: (problem: P) => readonly [string, string],
  world: World,
): T {
  if (result.ok) return result.value;
  const [what, mend] = words(result.problems[0]!);
  return refuse(what, mend, world);
}

/** Ends the command, and says what is to be done. */
export function refuse(what: string, mend: string, world: World): never {
  world.stderr.write(`mantelwright: ${what}\n  mend: ${mend}\n`);
  return exitWith(exitCodes.badInput);
}
