import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Said, Task } from './child.ts';
import type { ByHand, Solved } from './measure.ts';
import type { ByMip } from './mip.ts';

/** All that is known of one job once its process has ended. */
export interface Outcome {
  readonly family: string;
  readonly job: number;
  readonly size: { readonly kinds: number; readonly pieces: number; readonly boards: number } | null;
  readonly known: number | null;
  readonly runs: readonly Solved[];
  readonly byHand: ByHand | null;
  readonly byMip: ByMip | null;
  /** Crashes and processes that had to be ended, in words. */
  readonly failures: readonly string[];
}

/**
 * Runs one task in a process of its own and gathers what it says. A process that says nothing for far longer than its
 * limits allow is ended and counted as a failure.
 */
export function runChild(task: Task): Promise<Outcome> {
  const child = fork(fileURLToPath(new URL('./child.js', import.meta.url)), {
    stdio: 'inherit',
    serialization: 'advanced',
  });
  const said: Said[] = [];
  const failures: string[] = [];
  const patience =
    1000 * ((task.clock === 'wall' ? 3 : 15) * Math.max(task.seconds, 3 * task.mipSeconds) + 120);
  const ended = (): void => {
    failures.push(
      `said nothing for ${patience / 1000} s after "${said.at(-1)?.kind ?? 'start'}" and was ended`,
    );
    child.kill('SIGKILL');
  };
  let watch = setTimeout(ended, patience);
  child.on('message', (message: Said) => {
    said.push(message);
    clearTimeout(watch);
    watch = setTimeout(ended, patience);
  });
  const endToo = (): void => {
    child.kill('SIGKILL');
    process.exit(1);
  };
  process.once('SIGTERM', endToo);
  child.send(task);
  return new Promise((resolve) => {
    child.on('exit', (code, signal) => {
      clearTimeout(watch);
      process.off('SIGTERM', endToo);
      if (code !== 0)
        failures.push(`process ended with ${signal ?? code} after "${said.at(-1)?.kind ?? 'start'}"`);
      resolve(gather(task, said, failures));
    });
  });
}

function gather(task: Task, said: readonly Said[], failures: readonly string[]): Outcome {
  const of = <K extends Said['kind']>(kind: K): Extract<Said, { kind: K }>[] =>
    said.filter((one): one is Extract<Said, { kind: K }> => one.kind === kind);
  const size = of('job')[0] ?? null;
  return {
    family: task.family,
    job: task.job,
    size,
    known: size?.known ?? null,
    runs: of('solved')[0]?.runs ?? [],
    byHand: of('by hand')[0]?.byHand ?? null,
    byMip: of('by mip')[0]?.byMip ?? null,
    failures: [...failures, ...of('failed').map(({ at, why }) => `${at} failed: ${why}`)],
  };
}
