/**
 * The published one-dimensional problems: name, published optimum, found, bound, proven, milliseconds, checksum.
 * Arguments: parts of names to pick (all when none), and `effort=1`.
 */
import { performance } from 'node:perf_hooks';
import { buildInstance } from '../../src/flow/choice/build-instance.ts';
import { isSticks } from '../../src/flow/choice/sticks/to-sticks.ts';
import { solveSticks } from '../../src/flow/choice/sticks/solve-sticks.ts';
import { stickFamilies, stickJob, stickProblems } from '../published/sticks-jobs.ts';

/** As `choose` counts it: work that an effort of 1 allows. */
function budget(pieces: number, effort: number): number {
  return effort * (2e8 + pieces * 1e7);
}

const words = process.argv.slice(2);
const effort = Number(words.find((word) => word.startsWith('effort='))?.slice(7) ?? 1);
const names = words.filter((word) => !word.includes('='));

for (const family of stickFamilies) {
  for (const problem of stickProblems(family)) {
    if (names.length > 0 && !names.some((name) => problem.name.includes(name))) continue;
    const instance = buildInstance(stickJob(problem));
    const pieces = problem.parts.reduce((sum, part) => sum + part.count, 0);
    const began = performance.now();
    if (!isSticks(instance)) {
      console.log(problem.name, 'is no job of sticks');
      continue;
    }
    const steps = solveSticks(instance, { seed: 1, until: instance.meter.spent + budget(pieces, effort) });
    let step = steps.next();
    while (step.done !== true) step = steps.next();
    const { plan, bound } = step.value;
    const ms = Math.round(performance.now() - began);
    let checksum = 0;
    for (const column of plan.columns)
      for (const [i, kind] of column.kinds.entries())
        checksum = (Math.imul(checksum, 31) + kind * 7 + column.counts[i]!) | 0;
    console.log(
      problem.name.padEnd(24),
      String(problem.known.value).padStart(6),
      String(plan.objective).padStart(6),
      bound.toFixed(2).padStart(9),
      plan.objective - bound < 1e-6 ? 'proven' : '      ',
      `${ms} ms`.padStart(9),
      `${Math.round(instance.meter.spent / 1e6)}M`,
      (checksum >>> 0).toString(16),
    );
  }
}
