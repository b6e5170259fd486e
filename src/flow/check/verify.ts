import type { LaidBoard, Layout } from '../cuts/layout.ts';
import type { Part } from '../parts/part.ts';
import type { Board } from '../stock/board.ts';
import type { Job } from '../stock/job.ts';
import { copyFaults } from './copies.ts';
import { breakFaults, withBreaks } from './breaks.ts';
import type { CheckProblem } from './fault.ts';
import { sortBench } from './leftovers.ts';
import { trimmed } from './outline.ts';
import { boardFaults, pieceFaults } from './pieces.ts';
import { replay } from './replay.ts';
import { meetingsOn, runFaults } from './runs.ts';
import { boardSumFaults, proofFaults, totalFaults } from './sums.ts';
import { woodFaults } from './woods.ts';

/**
 * Everything wrong with a layout of a job; an empty list means that it can be cut as it says, obeys every rule of
 * wood and saw, and tells the truth about areas, money and proof (the bound itself is taken on trust: only a solver
 * can work it out). Shares no code with the solver or the cut sequence, only their shapes: each rule is worked anew
 * from the job, its runs broken where the layout says so. Names of boards and parts are taken to be unique in the job.
 * Cost: about pieces² per board. Never throws on a layout that `parseLayout` gave.
 */
export function verify(asked: Job, layout: Layout): CheckProblem[] {
  const job = withBreaks(asked, layout);
  const boards = new Map<string, Board>(job.boards.map((board) => [board.name, board]));
  const parts = new Map<string, Part>(job.parts.map((part) => [part.name, part]));
  return [
    ...headerFaults(job, layout),
    ...boardFaults(layout, boards),
    ...copyFaults(job, layout, parts, boards),
    ...breakFaults(asked, layout),
    ...runFaults(job, layout, parts),
    ...woodFaults(job, layout, parts, boards),
    ...doubleIds(layout),
    ...layout.boards.flatMap((laid) => {
      const board = boards.get(laid.board);
      return board === undefined ? [] : oneBoard(laid, board, { job, layout, parts });
    }),
    ...totalFaults(layout, boards, job.shop),
    ...proofFaults(job, layout, boards),
  ];
}

function headerFaults(job: Job, layout: Layout): CheckProblem[] {
  const rows = [
    ['ticks per inch', layout.ticksPerInch, 8128],
    ['rip kerf', layout.kerf.rip, job.shop.ripKerf],
    ['crosscut kerf', layout.kerf.crosscut, job.shop.crosscutKerf],
  ] as const;
  return rows.flatMap(([what, said, right]) =>
    said === right ? [] : [{ kind: 'wrong header' as const, what, said, right }],
  );
}

function oneBoard(
  laid: LaidBoard,
  board: Board,
  { job, layout, parts }: { job: Job; layout: Layout; parts: ReadonlyMap<string, Part> },
): CheckProblem[] {
  const usable = trimmed(board, job.shop);
  const meetings = meetingsOn(laid, layout, parts, job.shop.crosscutKerf);
  const { bench, kerf, faults } = replay(laid, usable, job.shop, meetings);
  const sorted = bench === null ? null : sortBench(laid, bench, usable, job.shop);
  return [
    ...pieceFaults(laid, board, job, parts),
    ...faults,
    ...(sorted?.faults ?? []),
    ...boardSumFaults(laid, board, usable, sorted === null ? null : { kerf, scrap: sorted.scrap }),
  ];
}

function doubleIds(layout: Layout): CheckProblem[] {
  const seen = new Set<string>();
  return layout.boards.flatMap(({ board, copy, offcuts }) =>
    offcuts.flatMap(({ id }) => {
      if (!seen.has(id)) {
        seen.add(id);
        return [];
      }
      return [{ kind: 'offcut named twice' as const, on: { board, copy }, id }];
    }),
  );
}
