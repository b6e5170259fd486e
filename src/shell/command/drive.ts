import { setImmediate } from 'node:timers/promises';
import type { Progress, Steps } from '../../index.ts';
import { pricingThread } from '../threads/pricing-thread.ts';
import { type AnswerTo, type Question, type Reins, stepsOf } from '../threads/question.ts';
import { askThread, solvingScript } from '../threads/solving-thread.ts';
import { progressLine } from './progress-line.ts';
import type { World } from './world.ts';

/** When a drive ends at the latest, by the world's clock; null: when the work is done. */
export interface Limit {
  readonly deadline: number | null;
}

/** What came out, and whether it was ended early. */
export interface Driven<T> {
  readonly value: T;
  readonly ended: 'done' | 'interrupted' | 'out of time';
}

/** The limit that a command's options set it, from now on: taken once, when it begins, so that it holds for all it does. */
export function limitOf({ seconds }: { readonly seconds?: number }, world: World): Limit {
  return { deadline: seconds === undefined ? null : world.now() + 1000 * seconds };
}

/**
 * Has a question answered, and hears Ctrl-C and the time limit meanwhile: then the best answer so far is kept. Shows
 * progress where a person watches. The work is done by a thread of its own, so that it may take steps of any length; from
 * sources, which a thread cannot run, on this one, which hears them between two steps.
 * @returns null for an answer where it was ended before there was one
 */
export async function drive<Q extends Question>(
  question: Q,
  world: World,
  limit: Limit,
): Promise<Driven<AnswerTo<Q> | null>> {
  const script = solvingScript();
  if (script === null) return driveHere((reins) => stepsOf(question, reins), world, limit);
  const watch = watched(world, limit);
  let timer: NodeJS.Timeout | undefined;
  try {
    const value = await askThread(question, script, {
      progress: watch.show,
      reins: (stop) => {
        watch.onInterrupt(stop);
        if (limit.deadline !== null)
          timer = setTimeout(() => watch.isOver() && stop(), untilAfter(limit.deadline - world.now()));
      },
    });
    return { value, ended: watch.ended() };
  } finally {
    clearTimeout(timer);
    watch.end();
  }
}

/** Milliseconds to wait so that so many have passed for certain; a timer cannot wait longer than 31 bits say. */
function untilAfter(milliseconds: number): number {
  return Math.min(2 ** 31 - 1, Math.max(0, milliseconds) + 5);
}

/** Drives steps on this thread: Ctrl-C and the time limit are heard between two of them. @param start begins the work */
export async function driveHere<T>(
  start: (reins: Reins) => Steps<T>,
  world: World,
  limit: Limit,
): Promise<Driven<T>> {
  const watch = watched(world, limit);
  const { open: thread, end } = pricingThread();
  try {
    const steps = start({ stop: watch.isOver, thread });
    for (;;) {
      const step = steps.next();
      if (step.done === true) return { value: step.value, ended: watch.ended() };
      watch.show(step.value);
      await setImmediate();
    }
  } finally {
    end();
    watch.end();
  }
}

/** The progress line, Ctrl-C and the clock of one drive. */
interface Watch {
  readonly show: (progress: Progress) => void;
  /** Also calls this at Ctrl-C. */
  readonly onInterrupt: (stop: () => void) => void;
  /** Turns true once when the work should end. */
  readonly isOver: () => boolean;
  readonly ended: () => Driven<unknown>['ended'];
  readonly end: () => void;
}

function watched(world: World, { deadline }: Limit): Watch {
  const line = progressLine(world);
  const told: (() => void)[] = [];
  let interrupted = false;
  let late = false;
  const release = world.onInterrupt(() => {
    interrupted = true;
    if (world.isTerminal) line.say('stopping with the best answer so far (Ctrl-C again to give up)');
    for (const stop of told) stop();
  });
  return {
    show: line.show,
    onInterrupt: (stop) => void told.push(stop),
    isOver: () => {
      late ||= deadline !== null && world.now() >= deadline;
      return interrupted || late;
    },
    ended: () => (interrupted ? 'interrupted' : late ? 'out of time' : 'done'),
    end: () => {
      line.clear();
      release();
    },
  };
}
