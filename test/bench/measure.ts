import { createHash } from 'node:crypto';
import { performance } from 'node:perf_hooks';
import { describeFault } from '../../src/flow/check/describe-fault.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import type { SolveOptions } from '../../src/flow/choice/progress.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { pricingThread } from '../../src/shell/threads/pricing-thread.ts';
import { handMethod } from './hand-method.ts';

/** What one solve came to. Times in seconds. */
export interface Solved {
  readonly value: number;
  readonly bound: number;
  readonly gap: number;
  readonly proven: boolean;
  readonly boards: number;
  readonly short: number;
  readonly yield: number;
  readonly faults: readonly string[];
  /** Until the first layout was at hand; by the clock of the limits. */
  readonly first: number;
  /** Until the value of the answer was reached; by the clock of the limits. */
  readonly best: number;
  /** Until the checked layout was at hand. */
  readonly wall: number;
  readonly cpu: number;
  /** Longest stretch between two chances to stop; by the clock of the limits. */
  readonly longestStep: number;
  /** What it was doing then. */
  readonly longestDoing: string;
  /** Whether the clock ended it: then its answer depends on the machine. */
  readonly stopped: boolean;
  /** Most memory the process had by then. */
  readonly megabytes: number;
  readonly checksum: string;
}

export interface SolveLimits {
  readonly seed: number;
  readonly effort: number;
  /** After so many seconds the solve is told to stop, */
  readonly seconds: number;
  /** of the clock, or of this process on any processor: on a busy machine the latter is fairer. */
  readonly clock: 'wall' | 'cpu';
  /** Threads to price boards with: two, as the command does, or this one alone. Processor seconds are those of both. */
  readonly threads: 1 | 2;
}

function cpuSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** Solves a job as the command does, from parts and boards to a checked layout, and times it. */
export function measureSolve(job: Job, limits: SolveLimits): Solved {
  const { open, end } = pricingThread();
  try {
    return timed(job, limits, limits.threads === 2 ? open : undefined);
  } finally {
    end();
  }
}

function timed(
  job: Job,
  { seed, effort, seconds, clock }: SolveLimits,
  thread: SolveOptions['thread'],
): Solved {
  const [start, cpuBefore] = [performance.now(), cpuSeconds()];
  const wall = (): number => (performance.now() - start) / 1000;
  const cpu = (): number => cpuSeconds() - cpuBefore;
  const since = clock === 'wall' ? wall : cpu;
  let stopped = false;
  const stop = (): boolean => (stopped ||= since() > seconds);
  const times = { first: -1, best: 0, last: 0, longestStep: 0 };
  let [value, doing, longestDoing]: [number | null, string, string] = [null, 'first layout', ''];
  const steps = layOutJob(job, { seed, effort, stop, thread });
  let step = steps.next();
  for (; step.done !== true; step = steps.next()) {
    const now = since();
    if (times.first < 0 && step.value.value !== null) times.first = now;
    if (step.value.value !== value) times.best = now;
    if (now - times.last > times.longestStep) {
      times.longestStep = now - times.last;
      longestDoing = step.value.doing === doing ? doing : `${doing}, ${step.value.doing}`;
    }
    [value, doing, times.last] = [step.value.value, step.value.doing, now];
  }
  const { layout, faults } = step.value;
  if (value === null || Math.abs(layout.proof.value - value) > 1e-6 * (1 + Math.abs(value)))
    times.best = since();
  return {
    ...layout.proof,
    bound: layout.proof.bound ?? 0,
    gap: layout.proof.gap ?? 1,
    boards: layout.totals.boards,
    short: layout.short.reduce((sum, { copies }) => sum + copies, 0),
    yield: layout.totals.yield,
    faults: faults.map((fault) => describeFault(fault)),
    first: times.first < 0 ? since() : times.first,
    best: times.best,
    wall: wall(),
    cpu: cpu(),
    longestStep: times.longestStep,
    longestDoing,
    stopped,
    megabytes: process.resourceUsage().maxRSS / 1024,
    checksum: createHash('sha256').update(JSON.stringify(layout)).digest('hex').slice(0, 8),
  };
}

export interface ByHand {
  readonly cost: number;
  readonly short: number;
  readonly faults: readonly string[];
  readonly seconds: number;
}

/** The hand method's layout, held against the same independent check; null where it does not know the job. */
export function measureHand(job: Job): ByHand | null {
  const start = performance.now();
  const choice = handMethod(job);
  if (choice === null) return null;
  const seconds = (performance.now() - start) / 1000;
  const layout = layOut(job, choice);
  return {
    cost: layout.proof.value,
    short: layout.short.reduce((sum, { copies }) => sum + copies, 0),
    faults: verify(job, layout).map((fault) => describeFault(fault)),
    seconds,
  };
}
