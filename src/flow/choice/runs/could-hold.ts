import type { Part } from '../../parts/part.ts';
import type { Job } from '../../stock/job.ts';
import { faceHoldsRun } from '../../stock/run-strip.ts';
import { facesFor } from '../build-instance.ts';
import type { BreakWay } from './break-way.ts';

/**
 * A first sieve of ways to break runs, from which none that has a layout falls through: whether for each stretch of several
 * pieces some face of some board that they may come from has room.
 */
export function sieveOf(job: Job): (way: BreakWay) => boolean {
  const parts = new Map(job.parts.map((part) => [part.name, part]));
  const known = new Map<string, boolean>();
  const holds = (names: readonly string[]): boolean => {
    if (names.length === 1) return true;
    const key = JSON.stringify(names);
    const held =
      known.get(key) ??
      couldHold(
        job,
        names.map((name) => parts.get(name)!),
      );
    known.set(key, held);
    return held;
  };
  return ({ runs }) => runs.every(({ stretches }) => stretches.every(holds));
}

/** Whether some face of some board that all these parts may come from has room for them, one after another. */
export function couldHold(job: Job, run: readonly Part[]): boolean {
  return job.boards.some((board) =>
    (['A', 'B'] as const).some(
      (face) =>
        run.every((part) => facesFor(part, board).includes(face)) && faceHoldsRun(run, board, job.shop, face),
    ),
  );
}
