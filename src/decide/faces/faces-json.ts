import { ticksPerInch } from '../../base/units/tick.ts';
import type { FaceChoice, FaceTable } from './face-table.ts';
import { hindranceWords } from './face-words.ts';

/** The table for programs, lengths in ticks: one object and a line end. */
export function facesJson(table: FaceTable): string {
  const { job, focus, plan, choices } = table;
  const name = (index: number): string => job.parts[index]!.name;
  return `${JSON.stringify({
    format: 'mantelwright faces 1',
    ticksPerInch,
    job: job.name,
    part: name(focus.lead),
    run: focus.members.length === 1 ? null : focus.members.map(name),
    goal: job.shop.goal,
    cheapest: {
      value: plan.value,
      bound: plan.layout.proof.bound,
      proven: plan.proven,
      boardFeet: plan.layout.totals.boardFeet,
      boards: plan.layout.boards.map(({ board, copy }) => ({ board, copy })),
    },
    choices: choices.map((choice) => choiceJson(choice, table)),
  })}\n`;
}

function choiceJson(choice: FaceChoice, { job }: FaceTable) {
  const { board, face, look } = choice;
  if (choice.kind === 'untried') return { board, face, look, possible: null };
  if (choice.kind === 'impossible') {
    return {
      board,
      face,
      look,
      possible: false,
      why: choice.why,
      words: hindranceWords(choice.why, job.shop),
    };
  }
  const { measure, welcome, value, bound, proven, extra, moreFeet, groups, unrolled, isUnbeaten } = choice;
  return {
    ...{ board, face, look, possible: true, measure, welcome, value, bound, proven, extra },
    boardFeetMore: moreFeet,
    wrapsWhole: groups.length === 1,
    stretches: groups,
    unbeaten: isUnbeaten,
    boards: choice.layout.boards.map((laid) => ({ board: laid.board, copy: laid.copy })),
    unrolled: {
      length: unrolled.length,
      width: unrolled.width,
      pieces: unrolled.pieces.map(({ marks, ...piece }) => ({
        ...piece,
        marks: marks.map(({ defect, isWelcome, ...at }) => ({
          ...at,
          kind: defect.kind,
          welcome: isWelcome,
        })),
      })),
    },
  };
}
