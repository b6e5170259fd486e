import { surfaceMeasure, yardFeet } from '../../trade/board-feet.ts';
import { ticks, ticksPerInch } from '../../base/units/tick.ts';
import { surfacedThickness } from '../../trade/thickness.ts';
import type { RunInStretches } from '../choice/runs/break-way.ts';
import { couldHold } from '../choice/runs/could-hold.ts';
import type { PassedOver, RunsChoice } from '../choice/runs/runs-choice.ts';
import type { Part } from '../parts/part.ts';
import type { Job } from '../stock/job.ts';
import { runStrip } from '../stock/run-strip.ts';
import { roughSize } from '../stock/usable.ts';
import type { BrokenRun } from './layout.ts';

/**
 * The runs that a choice broke, why, and what each whole would have cost.
 * @param job its runs as they were asked for
 */
export function brokenRuns(job: Job, chosen: RunsChoice): BrokenRun[] {
  return chosen.way.runs
    .filter(({ stretches }) => stretches.length > 1)
    .map((run) => brokenRun(job, chosen, run));
}

function brokenRun(job: Job, chosen: RunsChoice, { run, stretches }: RunInStretches): BrokenRun {
  const parts = job.parts.filter((part) => part.run === run && part.quantity > 0);
  const isWhole = (runs: readonly RunInStretches[]): boolean =>
    runs.some((other) => other.run === run && other.stretches.length === 1);
  const passedWhole = chosen.passed.filter(({ way }) => isWhole(way.runs)).map(({ why }) => why);
  const isForMoney = chosen.best !== null;
  const why = isForMoney ? 'money' : couldHold(job, parts) ? reasonOf(passedWhole, chosen) : 'no board';
  const saves = chosen.best === null ? null : chosen.best.proof.value - chosen.choice.proof.value;
  const inDoubt = chosen.passed.find((one) => one.why === 'not found' && !isWhole(one.way.runs));
  const clear = runStrip(parts, job.shop);
  return {
    run,
    stretches,
    why,
    clear,
    inDoubt: inDoubt?.way.runs.find((other) => other.run === run)?.stretches ?? null,
    saves,
    whole: isForMoney ? null : withOneBoard(job, chosen, parts),
  };
}

/** The plainest of the reasons for which ways with the run whole were passed over. */
function reasonOf(passed: readonly PassedOver[], { choice }: RunsChoice): BrokenRun['why'] {
  if (choice.short.length > 0) return 'fewest short';
  return passed.includes('not found') ? 'not found' : 'no layout';
}

/** One more board on which the whole run has just room will do, whatever lies on the others: nothing else has to move. */
function withOneBoard(job: Job, { choice }: RunsChoice, parts: readonly Part[]): BrokenRun['whole'] {
  if (choice.short.length > 0 || parts.some(({ quantity }) => quantity !== 1)) return null;
  const board = roughSize(runStrip(parts, job.shop), job.shop);
  const thickest = Math.max(...parts.map(({ thickness }) => thickness));
  const nominal = surfacedThickness.find(
    ({ rough, s2s }) => rough >= 1 && s2s * ticksPerInch >= thickest,
  )?.rough;
  if (nominal === undefined) return null;
  const [length, width] = [ticks(board.length), ticks(board.width)];
  const feet = yardFeet(length, width, nominal, [surfaceMeasure(length, width, 'up')]);
  return { board, cost: feet * job.shop.pricePerBoardFoot };
}
