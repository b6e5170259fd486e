import { verify } from '../../../src/flow/check/verify.ts';
import { describeFault } from '../../../src/flow/check/describe-fault.ts';
import { parseLayout } from '../../../src/flow/check/parse-layout.ts';
import type { Layout } from '../../../src/flow/cuts/layout.ts';
import type { Job } from '../../../src/flow/stock/job.ts';
import { faceTable } from '../../../src/decide/faces/face-table.ts';
import { facesPage } from '../../../src/decide/faces/faces-page.ts';
import { focusOf } from '../../../src/decide/faces/focus.ts';
import { premiumLines } from '../../../src/decide/faces/layout-face.ts';
import { pickFace } from '../../../src/decide/faces/pick-face.ts';
import { layOutJob, type CheckedLayout } from '../../../src/pipeline.ts';
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

/** As the command does it: by the face within the premium, where there is one. */
function laidOut(
  job: Job,
  effort: number,
  isWithTable: boolean,
): { readonly job: Job; readonly checked: CheckedLayout } {
  const rack = { job: 'job', used: new Set<string>(), needs: [] };
  const solve = (given: Job): ReturnType<typeof layOutJob> => layOutJob(given, { seed: 1, effort }, rack);
  const focus = focusOf(job, null);
  if (!focus.ok || !isWithTable) return { job, checked: driven(solve(job)) };
  const table = driven(faceTable(job, focus.value, solve));
  facesPage(table);
  const choice = pickFace(table, job.shop.facePremium);
  if (choice !== null) premiumLines(table, choice, job.shop.facePremium);
  const chosen = choice === null ? job : choice.job;
  return { job: chosen, checked: driven(solve(chosen)) };
}

/** Lays out the random job of this seed, as `layout` does, and holds it against the check, a replay of the tests' own, and its own file. */
export function outcomeOf(seed: number, effort: number, isDrawn = true): Outcome {
  const { value, problems } = readJobTexts(`job ${seed}`, anyJobTexts(seed));
  if (problems.length > 0)
    throw new Error(`the generator made a job that cannot be read:\n${printProblems(problems)}`);
  const shows = value.parts.some(({ show, quantity }) => show > 0 && quantity > 0);
  try {
    const { job, checked } = laidOut(value, effort, shows && value.shop.facePremium > 0);
    const { layout, faults } = checked;
    summaryText(job, layout);
    if (isDrawn) resultFiles(job, layout, null);
    const wrong = [
      ...faults.map((fault) => `check: ${describeFault(fault)}`),
      ...replayFaults(job, layout).map((why) => `replay: ${why}`),
      ...readAgain(job, layout),
    ];
    const hasRun = layout.boards.some(({ pieces }) => pieces.some(({ run }) => run !== undefined));
    return { wrong, isShort: layout.short.length > 0, isProven: layout.proof.proven, hasRun };
  } catch (error) {
    return { wrong: [`thrown: ${String(error)}`], isShort: false, isProven: false, hasRun: false };
  }
}

/** What is wrong with the answer as another program, or `check`, reads it. */
function readAgain(job: Job, layout: Layout): string[] {
  const read = parseLayout(JSON.parse(JSON.stringify(layout)));
  if (!read.ok) return ['its own answer cannot be read'];
  return verify(job, read.value).map((fault) => `check of the file: ${describeFault(fault)}`);
}
