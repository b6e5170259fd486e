import { mayBreak } from '../../parts/plan-parts.ts';
import type { Part } from '../../parts/part.ts';
import { type RunGroups, waysToBreakAll } from '../../plan/run-break.ts';
import type { Job } from '../../stock/job.ts';

/** A run of several parts, and its parts by name in stretches that stay together. */
export interface RunInStretches {
  readonly run: string;
  readonly stretches: RunGroups;
}

/** A way to break those runs of a job that may be broken. */
export interface BreakWay {
  /** The job with its runs broken so. */
  readonly job: Job;
  /** The runs that may be broken, whole ones among them. */
  readonly runs: readonly RunInStretches[];
}

/**
 * The ways to break a job's runs, the best first (see `waysToBreakAll`); the last has every piece of them free. One way
 * where no run of several parts may be broken: the job as it is.
 */
export function breakWays(job: Job): readonly BreakWay[] {
  const runs = breakableRuns(job);
  if (runs.length === 0) return [{ job, runs: [] }];
  const pieces = runs.map(({ parts }) => ({
    names: parts.map(({ name }) => name),
    front: parts.reduce((most, part, index) => (isMoreLookedAt(part, parts[most]!) ? index : most), 0),
  }));
  return waysToBreakAll(pieces).map((groups) => {
    const broken = runs.map(({ run }, index): RunInStretches => ({ run, stretches: groups[index]! }));
    return { job: brokenJob(job, broken), runs: broken };
  });
}

function breakableRuns(job: Job): { readonly run: string; readonly parts: readonly Part[] }[] {
  const names = new Set(job.parts.flatMap(({ run }) => (run === null ? [] : [run])));
  return [...names].flatMap((run) => {
    const parts = job.parts.filter((part) => part.run === run && part.quantity > 0);
    return parts.length > 1 && mayBreak(run, job.shop) ? [{ run, parts }] : [];
  });
}

function isMoreLookedAt(a: Part, b: Part): boolean {
  return a.show !== b.show ? a.show > b.show : a.length * a.width > b.length * b.width;
}

/** The job with its runs in these stretches: each a run of its own by a number, a piece alone free. */
export function brokenJob(job: Job, runs: readonly RunInStretches[]): Job {
  const taken = new Set(job.parts.map(({ run }) => run));
  const renamed = new Map<string, string | null>();
  for (const { run, stretches } of runs) {
    if (stretches.length === 1) continue;
    let number = 0;
    for (const names of stretches) {
      do number += 1;
      while (taken.has(`${run} ${number}`));
      for (const name of names) renamed.set(name, names.length === 1 ? null : `${run} ${number}`);
    }
  }
  if (renamed.size === 0) return job;
  const parts = job.parts.map((part) => {
    const run = renamed.get(part.name);
    return run === undefined ? part : { ...part, run };
  });
  return { ...job, parts };
}

/** Whether each stretch of the one way is part of a stretch of the other: what holds the other then holds it, too. */
export function isFiner(one: BreakWay, than: BreakWay): boolean {
  return one.runs.every(({ stretches }, run) => {
    const outer = than.runs[run]!.stretches;
    return stretches.every((names) => outer.some((other) => names.every((name) => other.includes(name))));
  });
}

/** The place of a layout's way to break the runs among all ways, 0 the best; a run that is not listed is whole. */
export function rankOf(ways: readonly BreakWay[], broken: readonly RunInStretches[]): number {
  return ways.findIndex(({ runs }) =>
    runs.every(({ run, stretches }) => {
      const other = broken.find((one) => one.run === run)?.stretches ?? [stretches.flat()];
      return JSON.stringify(other) === JSON.stringify(stretches);
    }),
  );
}
