import { setImmediate } from 'node:timers/promises';
import type { OpenThread, Progress } from '../../index.ts';
import { pricingThread } from '../threads/pricing-thread.ts';
import { progressLine } from './progress-line.ts';
import type { World } from './world.ts';

/** What a drive gives a solve: when to stop, and a second thread to price boards with. */
export interface Reins {
  /** Turns true once when the solve should end. */
  readonly stop: () => boolean;
  readonly thread: OpenThread;
}

/** How long a drive lasts at most, and what it says at Ctrl-C. */
export interface Limits {
  /** Milliseconds from now; null: until the work is done. */
  readonly milliseconds: number | null;
}

/** What came out, and whether it was ended early. */
export interface Driven<T> {
  readonly value: T;
  readonly ended: 'done' | 'interrupted' | 'out of time';
}

/**
 * Drives a solve step by step, so that Ctrl-C and a time limit are heard between two steps and the best answer so far
 * is kept. Shows progress where a person watches.
 * @param start begins the solve
 */
export async function drive<T>(
  start: (reins: Reins) => Generator<Progress, T, void>,
  world: World,
  limits: Limits,
): Promise<Driven<T>> {
  const deadline = limits.milliseconds === null ? Infinity : world.now() + limits.milliseconds;
  const line = progressLine(world);
  const { open: thread, end } = pricingThread();
  let interrupted = false;
  let late = false;
  const release = world.onInterrupt(() => {
    interrupted = true;
    if (world.isTerminal) line.say('stopping with the best layout so far (Ctrl-C again to give up)');
  });
  const stop = (): boolean => {
    late ||= world.now() >= deadline;
    return interrupted || late;
  };
  try {
    const steps = start({ stop, thread });
    for (;;) {
      const step = steps.next();
      if (step.done === true)
        return { value: step.value, ended: interrupted ? 'interrupted' : late ? 'out of time' : 'done' };
      line.show(step.value);
      await setImmediate();
    }
  } finally {
    end();
    line.clear();
    release();
  }
}
