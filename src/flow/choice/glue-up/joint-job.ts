import type { Part } from '../../parts/part.ts';
import { buildInstance } from '../build-instance.ts';
import { type Alternative, type Instance, usualStrips } from '../instance.ts';
import type { Job } from '../../stock/job.ts';
import type { BoardPattern, Choice, PlacedPiece, Short } from '../choice.ts';
import { whyShort } from '../short.ts';
import { alikeParts } from './alike.ts';
import { type WayToMake, partMade, waysToMake } from './way-to-make.ts';

/** Parts that are alike, each copy of which may be made in any of these ways; a part of the joint job for each way. */
export interface AlikeCopies {
  readonly parts: readonly number[];
  readonly copies: number;
  readonly ways: readonly WayToMake[];
  /** Index of the joint job's part for the first way; those for the others follow it. */
  readonly first: number;
}

/** A job with a part for each way in which some part may be made, wanted as often as if all copies were made so. */
export interface JointJob {
  readonly job: Job;
  readonly alike: readonly AlikeCopies[];
}

/** Puts alike parts together, and beside each other the ways to make them. */
export function jointJobOf(job: Job): JointJob {
  const parts: Part[] = [];
  const alike = alikeParts(job.parts).map((members): AlikeCopies => {
    const part = job.parts[members[0]!]!;
    const copies = members.reduce((sum, index) => sum + job.parts[index]!.quantity, 0);
    const first = parts.length;
    const list = waysToMake(job, part);
    parts.push(...list.map((way) => partMade(job, { ...part, quantity: copies }, way)));
    return { parts: members, copies, ways: list, first };
  });
  return { job: { ...job, parts }, alike };
}

/** The joint job as the solver sees it: which way each copy is made is part of the search. */
export function jointInstance({ job, alike }: JointJob): Instance {
  const pieces = alike.reduce((sum, { copies, ways }) => sum + copies * usualStrips(ways), 0);
  const instance = buildInstance(job, pieces);
  const kindOf = (part: number): number =>
    instance.kinds.findIndex(({ members }) => members[0]!.part === part);
  const alternatives = alike.flatMap(({ copies, ways, first }): Alternative[] => {
    // Strips that make no whole copy are worth nothing, so that a way to make it of strips is one even where there is no other.
    if (copies === 0 || (ways.length === 1 && ways[0]!.strips === 1)) return [];
    const limits = { least: 0, most: copies, laid: 0 };
    return [{ copies, ways: ways.map(({ strips }, w) => ({ kind: kindOf(first + w), strips, ...limits })) }];
  });
  return { ...instance, alternatives };
}

/** What one piece of the joint job becomes: a strip of a copy of one of the job's own parts. */
interface Share {
  readonly part: number;
  readonly copy: number;
  readonly strip: number;
}

/**
 * A choice for the joint job as one for the job itself: its pieces are handed out, copy by copy, to the parts that are
 * alike. Strips that make no whole copy, and copies too many, are not cut; a board that held nothing else is left.
 */
export function ofOwnParts(
  job: Job,
  { alike }: JointJob,
  patterns: readonly BoardPattern[],
  isUnfinished: boolean,
): Pick<Choice, 'patterns' | 'short'> {
  const shares = new Map<string, { readonly share: Share; readonly of: number }>();
  const short: Short[] = [];
  for (const { parts, ways, first } of alike) {
    const wanted = parts.flatMap((part) =>
      Array.from({ length: job.parts[part]!.quantity }, (_, copy) => ({ part, copy: copy + 1 })),
    );
    ways.forEach(({ strips }, w) => {
      const laid = patterns.flatMap(({ pieces }) => pieces).filter(({ part }) => part === first + w).length;
      wanted.splice(0, Math.floor(laid / strips)).forEach(({ part, copy }, made) => {
        for (let strip = 0; strip < strips; strip += 1) {
          const key = `${first + w} ${made * strips + strip + 1}`;
          shares.set(key, { share: { part, copy, strip }, of: strips });
        }
      });
    });
    for (const part of new Set(wanted.map((one) => one.part))) {
      const copies = wanted.filter((one) => one.part === part).length;
      short.push({ part, copies, why: whyShort(job, part, isUnfinished) });
    }
  }
  const asOwn = (piece: PlacedPiece): PlacedPiece[] => {
    const found = shares.get(`${piece.part} ${piece.copy}`);
    if (found === undefined) return [];
    const { part, copy, strip } = found.share;
    const own = { ...piece, part, copy };
    return [found.of === 1 ? own : { ...own, strip: { index: strip, of: found.of } }];
  };
  const own = patterns.map((pattern): BoardPattern => ({
    ...pattern,
    pieces: pattern.pieces.flatMap(asOwn),
  }));
  return { patterns: own.filter(({ pieces }) => pieces.length > 0), short };
}
