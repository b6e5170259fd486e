import type { Job } from '../../../src/flow/stock/job.ts';

/** What straightening its edges takes off each strip of a glue-up, in ticks (DESIGN's jointing allowance, 1/8 in). */
export const jointing = 1016;

/** What is cut as one: a whole part, one strip of a glued-up part, or a run. */
export interface JobKind {
  /** Indices of the job's parts: one, or those of a run in file order. */
  readonly parts: readonly number[];
  /** Strips that one copy is glued of; 1: whole. */
  readonly strips: number;
  readonly copies: number;
}

/** The kinds of a tiny job. All parts of a run are wanted equally often there. */
export function kindsOfJob({ parts }: Job): JobKind[] {
  const runs = new Map<string, number[]>();
  const kinds: JobKind[] = [];
  parts.forEach((part, index) => {
    if (part.quantity <= 0) return;
    if (part.run !== null) {
      runs.set(part.run, [...(runs.get(part.run) ?? []), index]);
      return;
    }
    for (let strips = 1; strips <= part.glueUp; strips += 1)
      kinds.push({ parts: [index], strips, copies: part.quantity });
  });
  for (const members of runs.values())
    kinds.push({ parts: members, strips: 1, copies: parts[members[0]!]!.quantity });
  return kinds;
}
