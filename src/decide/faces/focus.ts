import { type Result, failure, success } from '../../base/result/result.ts';
import { nearestName } from '../../base/text/nearest-name.ts';
import type { Part } from '../../flow/parts/part.ts';
import type { Job } from '../../flow/stock/job.ts';

/** What the choice of faces is about: one part, or the run it belongs to. Indices into the job's parts. */
export interface Focus {
  /** The part most looked at. */
  readonly lead: number;
  /** The parts of its run in order, or the part alone. */
  readonly members: readonly number[];
}

/** Why there is nothing to choose a face for. */
export type FocusProblem =
  | { readonly kind: 'no such part'; readonly name: string; readonly nearest: string | null }
  | { readonly kind: 'no parts' };

/**
 * The most visible part or run: largest `show`, then largest face, then first in the file.
 * @param name of a part to look at instead
 */
export function focusOf(job: Job, name: string | null): Result<Focus, FocusProblem> {
  const wanted = job.parts.flatMap((part, index) => (part.quantity > 0 ? [{ part, index }] : []));
  if (wanted.length === 0) return failure([{ kind: 'no parts' }]);
  if (name !== null) {
    const found = wanted.find(({ part }) => part.name === name);
    if (found !== undefined) return success(withRun(job, found.index));
    const names = wanted.map(({ part }) => part.name);
    return failure([{ kind: 'no such part', name, nearest: nearestName(name, names)?.name ?? null }]);
  }
  const most = wanted.reduce((best, other) => (isMoreVisible(other.part, best.part) ? other : best));
  return success(withRun(job, most.index));
}

function isMoreVisible(a: Part, b: Part): boolean {
  return a.show !== b.show ? a.show > b.show : a.length * a.width > b.length * b.width;
}

function withRun(job: Job, lead: number): Focus {
  const { run } = job.parts[lead]!;
  if (run === null) return { lead, members: [lead] };
  const members = job.parts.flatMap((part, index) => (part.run === run && part.quantity > 0 ? [index] : []));
  return { lead, members };
}
