import {
  type Focus,
  type FocusProblem,
  type ForRack,
  type Job,
  type LayOutSteps,
  type Result,
  type WishProblem,
  faceTable,
  focusOf,
  hindranceWords,
  jobOnFace,
  layOutJob,
  pickFace,
  premiumLines,
  readWish,
  wishLines,
} from '../../index.ts';
import { quoted } from '../wording.ts';
import { type Reins, drive } from './drive.ts';
import { exitCodes, exitWith } from './end.ts';
import { type StockedOpening, forRack } from './open-stock.ts';
import type { World } from './world.ts';

/** What `--face BOARD:FACE` makes of the argument reader's options, with those of the solve. */
export interface FaceOption {
  readonly face?: string;
  readonly seed: number;
  readonly effort: number;
  readonly seconds?: number;
}

/** A job made to show a face, and what is to be said of that; the job as it is where nothing asks for one. */
export interface FaceOfLayout {
  readonly job: Job;
  readonly lines: readonly string[];
}

/**
 * The face a layout is to show: the one asked for, else the best look within the shop's face premium. Ends the command
 * when what was asked for is not to be had.
 */
export async function faceOfLayout(
  opened: StockedOpening,
  options: FaceOption,
  world: World,
): Promise<FaceOfLayout> {
  const { job } = opened;
  if (options.face === undefined)
    return job.shop.facePremium > 0 ? withinPremium(opened, options, world) : plain(job);
  const focus = orRefuse(focusOf(job, null), focusWords, world);
  const wish = orRefuse(readWish(options.face, job), wishWords, world);
  const { value } = await drive(
    (reins) => jobOnFace(job, focus, wish, steps(options, reins, forRack(opened))),
    world,
    limits(options),
  );
  if (value.kind === 'cannot') {
    const part = job.parts[focus.lead]?.name ?? '';
    return refuse(
      `${quoted(part)} cannot show ${options.face}: ${hindranceWords(value.why, job.shop)}`,
      'see what each face can do: mantelwright faces',
      world,
    );
  }
  return { job: value.job, lines: wishLines(job, focus, wish, value) };
}

async function withinPremium(
  opened: StockedOpening,
  options: FaceOption,
  world: World,
): Promise<FaceOfLayout> {
  const { job } = opened;
  const focus = focusOf(job, null);
  const isSeen = focus.ok && (job.parts[focus.value.lead]?.show ?? 0) > 0;
  if (!isSeen) return plain(job);
  const { value: table } = await drive(
    (reins) => faceTable(job, focus.value, steps(options, reins, forRack(opened))),
    world,
    limits(options),
  );
  const premium = job.shop.facePremium;
  const choice = pickFace(table, premium);
  return choice === null ? plain(job) : { job: choice.job, lines: premiumLines(table, choice, premium) };
}

function plain(job: Job): FaceOfLayout {
  return { job, lines: [] };
}

/** One solve, of a layout as of each choice, so that their costs can be compared. */
export function steps(
  { seed, effort }: { readonly seed: number; readonly effort: number },
  reins: Reins,
  rack: ForRack,
): LayOutSteps {
  return (job) => layOutJob(job, { seed, effort, ...reins }, rack);
}

/** The time limit of the options. */
export function limits({ seconds }: { readonly seconds?: number }): { milliseconds: number | null } {
  return { milliseconds: seconds === undefined ? null : 1000 * seconds };
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

function refuse(what: string, mend: string, world: World): never {
  world.stderr.write(`mantelwright: ${what}\n  mend: ${mend}\n`);
  return exitWith(exitCodes.badInput);
}
