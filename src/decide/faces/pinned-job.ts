import type { Face } from '../../flow/stock/defect.ts';
import type { Job } from '../../flow/stock/job.ts';
import type { Focus } from './focus.ts';

/** The job with the lead pinned to a face of a board; all that stays in one strip with it goes there, too. */
export function pinnedJob(job: Job, focus: Focus, to: { readonly board: string; readonly face: Face }): Job {
  const parts = job.parts.map((part, index) =>
    index === focus.lead ? { ...part, pin: { board: to.board, face: to.face } } : part,
  );
  return { ...job, parts };
}
