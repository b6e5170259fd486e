import { corePart } from '../../../flow/choice/glue-up/core-part.ts';
import { type WayToMake, partMade, waysToMake } from '../../../flow/choice/glue-up/way-to-make.ts';
import type { Part } from '../../../flow/parts/part.ts';
import type { Job } from '../../../flow/stock/job.ts';

/** A part and the ways in which its boards could give it, whole first. */
export interface Making {
  readonly part: Part;
  readonly ways: readonly WayToMake[];
}

/** How many copies of a part are made in each of its ways; null: not decided. */
export type Split = readonly number[] | null;

/** A job's parts with their ways: those with only one way first, then the largest first. */
export function makingsOf(job: Job): Making[] {
  const area = ({ part }: Making): number => part.quantity * part.length * part.width;
  const all = job.parts.map((part): Making => ({ part, ways: waysToMake(job, part) }));
  return [
    ...all.filter(({ ways }) => ways.length === 1),
    ...all.filter(({ ways }) => ways.length > 1).sort((a, b) => area(b) - area(a)),
  ];
}

/** Copies of a part whose splits over its ways are all listed. */
const mostSplit = 4;

/** The ways to split a part's copies over its ways: all in one way first; null where there are too many to list. */
export function splitsOf({ part, ways }: Making): number[][] | null {
  if (part.quantity > mostSplit) return null;
  const splits: number[][] = [];
  const extend = (counts: readonly number[], left: number): void => {
    if (counts.length === ways.length - 1) splits.push([...counts, left]);
    else for (let count = left; count >= 0; count -= 1) extend([...counts, count], left - count);
  };
  extend([], part.quantity);
  const isAlone = (counts: readonly number[]): boolean => counts.includes(part.quantity);
  return [...splits.filter(isAlone), ...splits.filter((counts) => !isAlone(counts))];
}

/** All copies in one way, one split for each way, whole first. */
export function splitsAlone({ part, ways }: Making): number[][] {
  return ways.map((_, at) => ways.map((_way, index) => (index === at ? part.quantity : 0)));
}

/**
 * The job as the solver is asked for it: a decided part as so many copies in each way; of an undecided one what all its
 * ways have in common, so that where even that does not come out, no way does.
 */
export function jobMade(job: Job, makings: readonly Making[], splits: readonly Split[]): Job {
  const parts = makings.flatMap(({ part, ways }, index): Part[] => {
    const split = ways.length === 1 ? [part.quantity] : splits[index]!;
    if (split === null) return [corePart(job, part, ways)];
    return ways.flatMap((way, at) =>
      split[at]! > 0 ? [partMade(job, { ...part, quantity: split[at]! }, way)] : [],
    );
  });
  return { ...job, parts };
}
