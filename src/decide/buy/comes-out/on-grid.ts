import { type Tick, ticks } from '../../../base/units/tick.ts';
import { kindsOf } from '../../../flow/choice/kinds.ts';
import { blankOf } from '../../../flow/parts/blank.ts';
import type { Job } from '../../../flow/stock/job.ts';

/** Steps that lengths are measured in, as ticks: 1/64 in and 0.1 mm. */
const grids = [127, 32] as const;

/**
 * The job with each run a hair longer, so that its length comes to a whole step of the grid that all its parts and kerfs lie
 * on: the kerfs of its bevels are odd, and with one odd length among them the solver must look at places tick by tick.
 * A layout of it is a layout of the job; one that needs the last 1/64 in of a board is missed.
 */
export function onGrid(job: Job): Job {
  const { crosscutKerf } = job.shop;
  const free = job.parts
    .filter(({ run }) => run === null)
    .flatMap((part) =>
      (part.glueUp > 1 ? [1, 2] : [1]).map((strips) => blankOf(part, job.shop, strips).length),
    );
  const grid = grids.find((step) => [crosscutKerf, ...free].every((length) => length % step === 0));
  if (grid === undefined) return job;
  const longer = new Map<number, Tick>();
  for (const { members, length } of kindsOf(job)) {
    const last = members.at(-1)!.part;
    const odd = length % grid;
    const part = job.parts[last]!;
    if (odd > 0 && part.run !== null) longer.set(last, ticks(part.length + grid - odd));
  }
  return { ...job, parts: job.parts.map((part, at) => ({ ...part, length: longer.get(at) ?? part.length })) };
}
