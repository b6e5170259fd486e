import type { RunGroups } from '../../flow/plan/run-break.ts';
import type { Part } from '../../flow/parts/part.ts';
import type { Face } from '../../flow/stock/defect.ts';
import type { Job } from '../../flow/stock/job.ts';
import type { Focus } from './focus.ts';

/**
 * The job with the lead, and all that stays in one stretch with it, pinned to a face of a board; its run broken into
 * these groups. All copies of a part go to that board.
 */
export function pinnedJob(
  job: Job,
  focus: Focus,
  to: { readonly board: string; readonly face: Face },
  groups: RunGroups,
): Job {
  const lead = job.parts[focus.lead]!;
  const names = runNames(job, lead.run, groups);
  const parts = job.parts.map((part, index): Part => {
    if (!focus.members.includes(index)) return part;
    const at = groups.findIndex((group) => group.includes(part.name));
    const pin = groups[at]?.includes(lead.name) === true ? { board: to.board, face: to.face } : part.pin;
    return { ...part, run: names[at] ?? null, pin };
  });
  return { ...job, parts };
}

/** What each stretch is called: as before when whole, with a number of its own when broken, free when it is one piece. */
function runNames(job: Job, run: string | null, groups: RunGroups): (string | null)[] {
  if (run === null || groups.length === 1) return groups.map(() => run);
  const taken = new Set(job.parts.map((part) => part.run));
  let number = 0;
  return groups.map((group) => {
    if (group.length === 1) return null;
    do number += 1;
    while (taken.has(`${run} ${number}`));
    return `${run} ${number}`;
  });
}
