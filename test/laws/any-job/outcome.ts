import { verify } from '../../../src/flow/check/verify.ts';
import { describeFault } from '../../../src/flow/check/describe-fault.ts';
import { parseLayout } from '../../../src/flow/check/parse-layout.ts';
import type { Layout } from '../../../src/flow/cuts/layout.ts';
import type { Job } from '../../../src/flow/stock/job.ts';
import type { LayOutSteps } from '../../../src/decide/faces/face-table.ts';
import { focusOf } from '../../../src/decide/faces/focus.ts';
import { type FaceOfLayout, layoutAnswer } from '../../../src/decide/faces/layout-answer.ts';
import { layOutJob } from '../../../src/pipeline.ts';
import { summaryText } from '../../../src/flow/sheet/text/summary-text.ts';
import { resultFiles } from '../../../src/shell/command/result-files.ts';
import { printProblems } from '../../../src/shell/print-problem.ts';
import { readJobTexts } from '../../../src/shell/read/job-texts.ts';
import { anyJobTexts } from './texts.ts';
import { replayFaults } from './replay.ts';

/** What came of a job: `wrong` is all that would have ended in the exit code of a fault of the program, or should have. */
export interface Outcome {
  readonly wrong: readonly string[];
  readonly isShort: boolean;
  readonly isProven: boolean;
  readonly hasRun: boolean;
}

function driven<T>(steps: Generator<unknown, T, void>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** The face that the layout is to show: the best look within the premium, or of some seeds one that is asked for. */
function faceOf(job: Job, seed: number): FaceOfLayout | null {
  const focus = focusOf(job, null);
  if (!focus.ok) return null;
  const premium = job.shop.facePremium;
  const board = job.boards[seed % job.boards.length]?.name;
  if (seed % 12 === 0 && board !== undefined)
    return { kind: 'asked', focus: focus.value, wish: { board, face: seed % 24 === 0 ? 'A' : 'B' } };
  const shows = job.parts[focus.value.lead]!.show > 0;
  return shows && premium > 0 ? { kind: 'within premium', focus: focus.value, premium } : null;
}

const nothing: Outcome = { wrong: [], isShort: true, isProven: false, hasRun: false };

/**
 * Lays out the random job of this seed, as `layout` does, and holds it against the check, a replay of the tests' own, and its
 * own file.
 * @param isDrawn whether sheet, drawings and tables are made as well
 */
export function outcomeOf(seed: number, effort: number, isDrawn = true): Outcome {
  const { value: job, problems } = readJobTexts(`job ${seed}`, anyJobTexts(seed));
  // Boards none of which is large enough to cut from are refused: their unit may be another.
  if (problems.length > 0 && problems.every(({ kind }) => kind === 'implausible')) return nothing;
  if (problems.length > 0)
    throw new Error(`the generator made a job that cannot be read:\n${printProblems(problems)}`);
  const rack = { job: 'job', used: new Set<string>(), needs: [] };
  const solve: LayOutSteps = (given) => layOutJob(given, { seed: 1, effort }, rack);
  try {
    const answer = driven(layoutAnswer(job, faceOf(job, seed), solve, () => false));
    if (answer.kind === 'cannot') return nothing;
    const { job: asked, lines, checked } = answer;
    const { job: laid, layout, faults } = checked;
    summaryText(laid, layout);
    if (isDrawn) resultFiles(laid, layout, null, [{ heading: 'What shows', lines: [...lines] }]);
    const wrong = [
      ...faults.map((fault) => `check: ${describeFault(fault)}`),
      ...replayFaults(asked, layout).map((why) => `replay: ${why}`),
      ...readAgain(asked, layout),
    ];
    const hasRun = layout.boards.some(({ pieces }) => pieces.some(({ run }) => run !== undefined));
    return { wrong, isShort: layout.short.length > 0, isProven: layout.proof.proven, hasRun };
  } catch (error) {
    return { ...nothing, wrong: [`thrown: ${String(error)}`] };
  }
}

/** What is wrong with the answer as another program, or `check`, reads it. */
function readAgain(job: Job, layout: Layout): string[] {
  const read = parseLayout(JSON.parse(JSON.stringify(layout)));
  if (!read.ok) return ['its own answer cannot be read'];
  return verify(job, read.value).map((fault) => `check of the file: ${describeFault(fault)}`);
}
