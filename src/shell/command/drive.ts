import { setImmediate } from 'node:timers/promises';
import type { Progress } from '../../index.ts';
import { progressLine } from './progress-line.ts';
import type { World } from './world.ts';

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
 * @param start begins the solve; the question it is given turns true once when the solve should end
 */
export async function drive<T>(
  start: (stop: () => boolean) => Generator<Progress, T, void>,
  world: World,
  limits: Limits,
): Promise<Driven<T>> {
  const deadline = limits.milliseconds === null ? Infinity : world.now() + limits.milliseconds;
  const line = progressLine(world);
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
    const steps = start(stop);
    for (;;) {
      const step = steps.next();
      if (step.done === true)
        return { value: step.value, ended: interrupted ? 'interrupted' : late ? 'out of time' : 'done' };
      line.show(step.value);
      await setImmediate();
    }
  } finally {
    line.clear();
    release();
  }
}
