import { families } from './families.ts';
import { type ByHand, type SolveLimits, type Solved, measureHand, measureSolve } from './measure.ts';
import { type ByMip, measureMip } from './mip.ts';

/** What a child process is to do: one job, alone in its process, so that its memory and its crashes are its own. */
export interface Task extends SolveLimits {
  readonly family: string;
  readonly job: number;
  readonly mipSeconds: number;
  readonly runs: number;
}

/** What a child says as it goes. */
export type Said =
  | {
      readonly kind: 'job';
      readonly kinds: number;
      readonly pieces: number;
      readonly boards: number;
      readonly known: number | null;
    }
  | { readonly kind: 'solved'; readonly runs: readonly Solved[] }
  | { readonly kind: 'by hand'; readonly byHand: ByHand | null }
  | { readonly kind: 'by mip'; readonly byMip: ByMip }
  | { readonly kind: 'failed'; readonly at: string; readonly why: string };

/** A solve below this many seconds of processor time is done again for a median. */
const quick = 1;

/** Pieces above which the MIP solver is not asked: it would not finish. */
const mostPiecesForMip = 300;

function say(said: Said): void {
  process.send?.(said);
}

async function attempt(at: string, work: () => void | Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    say({ kind: 'failed', at, why: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}

async function work(task: Task): Promise<void> {
  const family = families.find(({ name }) => name === task.family);
  if (family === undefined) throw new RangeError(`no family ${task.family}`);
  const { job, known } = family.make(task.job);
  const pieces = job.parts.reduce((sum, part) => sum + part.quantity, 0);
  const boards = job.boards.reduce((sum, board) => sum + board.quantity, 0);
  say({ kind: 'job', kinds: job.parts.length, pieces, boards, known });
  await attempt('solving', () => {
    const runs = [measureSolve(job, task)];
    while (runs.length < task.runs && runs.every(({ cpu }) => cpu < quick))
      runs.push(measureSolve(job, task));
    say({ kind: 'solved', runs });
  });
  await attempt('the hand method', () => say({ kind: 'by hand', byHand: measureHand(job) }));
  if (task.mipSeconds === 0 || pieces > mostPiecesForMip) return;
  await attempt('the MIP solver', async () => {
    say({ kind: 'by mip', byMip: await measureMip(job, task.mipSeconds) });
  });
}

process.once('message', (task: Task) => {
  void attempt('the bench', () => work(task)).then(() => process.disconnect());
});
