import { availableParallelism } from 'node:os';
import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { type Visit, completer } from '../../index.ts';
import { type VisitDone, type VisitTask, type VisitWork, visitOf } from './visit-task.ts';

/** More threads than this bring little: an estimate is for a shop's computer. */
const mostThreads = 8;

/** What the drawing is watched by. */
export interface VisitWatch {
  /** Called after each visit. */
  readonly drawn: (done: number, of: number) => void;
  /** Whether to end early with the visits drawn so far. */
  readonly stop: () => boolean;
}

/**
 * Draws all visits of all tasks, spread over the processor's cores. Each visit depends on its seed and number alone, so
 * the answer is the same however many threads there are.
 * @returns for each task its visits in order; where it was ended early, only those from the first on without a gap
 */
export async function drawVisits(tasks: readonly VisitTask[], watch: VisitWatch): Promise<Visit[][]> {
  const found: (Visit | undefined)[][] = tasks.map(({ from, to }) => Array.from({ length: to - from }));
  const total = tasks.reduce((sum, { from, to }) => sum + to - from, 0);
  let done = 0;
  const keep = ({ task, visit, drawn }: VisitDone): void => {
    found[task]![visit - tasks[task]!.from] = drawn;
    done += 1;
    watch.drawn(done, total);
  };
  const worker = workerScript();
  // Never here where a thread can: a visit may take long, and Ctrl-C is to be heard meanwhile.
  if (worker === null) await drawHere(tasks, keep, watch.stop);
  else await drawThreaded(worker, tasks, keep, watch.stop);
  return found.map((visits) => {
    const gap = visits.findIndex((visit) => visit === undefined);
    return (gap < 0 ? visits : visits.slice(0, gap)).filter((visit) => visit !== undefined);
  });
}

/** The thread's script; null when this code runs from its sources, which a thread cannot. */
function workerScript(): URL | null {
  return import.meta.url.endsWith('.ts') ? null : new URL('./visit-worker.js', import.meta.url);
}

async function drawHere(
  tasks: readonly VisitTask[],
  keep: (done: VisitDone) => void,
  stop: () => boolean,
): Promise<void> {
  // Grade by grade in turn, so that ending early leaves as many visits of each.
  const most = Math.max(0, ...tasks.map(({ from, to }) => to - from));
  for (let step = 0; step < most; step += 1) {
    for (const [index, task] of tasks.entries()) {
      const visit = task.from + step;
      if (visit >= task.to) continue;
      if (stop()) return;
      const drawn = visitOf(task, visit, completer(task.seed));
      keep({ task: index, visit, drawn });
      await setImmediate();
    }
  }
}

async function drawThreaded(
  script: URL,
  tasks: readonly VisitTask[],
  keep: (done: VisitDone) => void,
  stop: () => boolean,
): Promise<void> {
  const of = Math.min(mostThreads, availableParallelism());
  const threads = Array.from(
    { length: of },
    (_, share) => new Worker(script, { workerData: { tasks, share, of } satisfies VisitWork }),
  );
  const watching = setInterval(() => {
    if (stop()) for (const thread of threads) void thread.terminate();
  }, 100);
  try {
    await Promise.all(threads.map((thread) => ended(thread, keep)));
  } finally {
    clearInterval(watching);
    await Promise.all(threads.map((thread) => thread.terminate()));
  }
}

function ended(thread: Worker, keep: (done: VisitDone) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    thread.on('message', keep);
    thread.once('error', reject);
    thread.once('exit', () => resolve());
  });
}
