import type { Layout } from '../cuts/layout.ts';
import type { Part } from '../parts/part.ts';
import type { Job } from '../stock/job.ts';
import type { PieceFault } from './fault.ts';

type Broken = NonNullable<Layout['broken']>[number];

/** The run that a plan proposes; a layout may break it, and one that a person wrote only where the shop lets it. */
const plannedRun = 'facing';

/** What is wrong with the runs that a layout says it broke: each is the job's, may be broken, and keeps its parts in order. */
export function breakFaults({ shop, parts }: Job, { broken = [] }: Layout): PieceFault[] {
  const seen = new Set<string>();
  return broken.flatMap(({ run, stretches }): PieceFault[] => {
    const say = (what: string): PieceFault => ({ kind: 'bad run', run: -1, why: `${run}: ${what}` });
    const faults: PieceFault[] = [];
    if (seen.has(run)) faults.push(say('it is said to be broken twice'));
    seen.add(run);
    if (run !== plannedRun && shop.ownRuns !== 'may break')
      faults.push(say('it is broken, and the shop keeps runs of its own whole'));
    if (stretches.length < 2 || stretches.some(({ length }) => length === 0))
      faults.push(say('its stretches are no break'));
    const own = parts.filter((part) => part.run === run && part.quantity > 0).map(({ name }) => name);
    if (JSON.stringify(own) !== JSON.stringify(stretches.flat()))
      faults.push(say('its stretches are not its parts in their order'));
    return faults;
  });
}

/** The job that a layout with broken runs is of: each stretch a run of its own, a part alone in none. */
export function withBreaks(job: Job, { broken = [] }: Layout): Job {
  if (broken.length === 0) return job;
  const parts = job.parts.map((part): Part => {
    const found = broken.find(({ run }) => run === part.run);
    return found === undefined ? part : { ...part, run: stretchName(found, part.name) };
  });
  return { ...job, parts };
}

function stretchName({ run, stretches }: Broken, part: string): string | null {
  const at = stretches.findIndex((names) => names.includes(part));
  return at < 0 || stretches[at]!.length === 1 ? null : JSON.stringify([run, at]);
}
