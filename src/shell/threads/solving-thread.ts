import { Worker } from 'node:worker_threads';
import type { Progress } from '../../index.ts';
import type { AnswerTo, Question } from './question.ts';
import type { Said, SolvingWork } from './solving-message.ts';

/** What whoever asks hears while he waits. */
export interface Listener {
  readonly progress: (progress: Progress) => void;
  /** Called once, with how to end the work early. */
  readonly reins: (stop: () => void) => void;
}

/**
 * Milliseconds that the work has, once it is told to stop, to end by itself: with an answer at hand that is as good, or
 * nearly, and with none yet.
 */
const patience = { withAnswer: 700, without: 1300 } as const;

/** The script of the solving thread; null when this code runs from its sources, which a thread cannot. */
export function solvingScript(): URL | null {
  return import.meta.url.endsWith('.ts') ? null : new URL('./solving-worker.js', import.meta.url);
}

/**
 * Asks a question of a thread of its own, so that this one always hears Ctrl-C and the clock, however long a step of the
 * work is. Told to stop, the work has a moment to end by itself; then it is ended, and its last answer so far stands.
 * @returns the answer; null where it was ended before there was one
 * @throws what the work threw
 */
export async function askThread<Q extends Question>(
  question: Q,
  script: URL,
  { progress, reins }: Listener,
): Promise<AnswerTo<Q> | null> {
  const stop = new Int32Array(new SharedArrayBuffer(4));
  let soFar: AnswerTo<Q> | null = null;
  let giveUp: NodeJS.Timeout | undefined;
  const worker = new Worker(script, { workerData: { question, stop } satisfies SolvingWork });
  try {
    return await new Promise((resolve, reject) => {
      worker.on('error', reject).on('exit', () => {
        reject(new Error('the solving thread ended without an answer'));
      });
      worker.on('message', (said: Said) => {
        switch (said.kind) {
          case 'progress':
            return progress(said.progress);
          case 'so far':
            soFar = said.answer as AnswerTo<Q>;
            return;
          case 'answer':
            return resolve(said.answer as AnswerTo<Q>);
          case 'fault':
            return reject(said.error as Error);
        }
      });
      reins(() => {
        Atomics.store(stop, 0, 1);
        giveUp ??= setTimeout(
          () => {
            resolve(soFar);
          },
          soFar === null ? patience.without : patience.withAnswer,
        );
      });
    });
  } finally {
    clearTimeout(giveUp);
    void worker.terminate();
  }
}
