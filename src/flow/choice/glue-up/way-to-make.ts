import { blankOf, partWithBlank } from '../../parts/blank.ts';
import { type Match, matchesOf, suits } from '../../parts/match.ts';
import type { Part } from '../../parts/part.ts';
import type { Board } from '../../stock/board.ts';
import type { Job } from '../../stock/job.ts';
import { holdsRun } from '../../stock/run-strip.ts';
import { usable } from '../../stock/usable.ts';
import { facesFor } from '../build-instance.ts';

/** How the copies of a part are made: whole (1), or of so many equal strips, all from boards of one species and one tone. */
export interface WayToMake {
  readonly strips: number;
  /** Null for a whole piece, which any board may give that suits the part. */
  readonly match: Match | null;
}

/** The part as it is when it is not glued up. */
export const whole: WayToMake = { strips: 1, match: null };

/** More strips than this are not tried: a wider panel is not made of one width of board. */
const mostStrips = 8;

/**
 * The ways in which some board could give a piece of the part: whole first, then by fewest strips, species and
 * tones in the order of the boards. Where none could, whole alone, so that the reason given is about the part as it was asked for. Parts of a
 * run, and those whose grain runs across, are never glued up: their strips would meet at end grain.
 */
export function waysToMake(job: Job, part: Part): WayToMake[] {
  if (part.glueUp <= 1 || part.run !== null || part.grain === 'across' || part.quantity <= 0) return [whole];
  const matches = matchesOf(job.boards.filter((board) => suits(part, board)));
  const counts = Array.from({ length: Math.min(part.glueUp, mostStrips) - 1 }, (_, index) => index + 2);
  const glued = counts.flatMap((strips) => matches.map((match): WayToMake => ({ strips, match })));
  const ways = [whole, ...glued].filter((way) => {
    const made = partMade(job, part, way);
    return job.boards.some((board) => mayServe(job, made, board));
  });
  return ways.length === 0 ? [whole] : ways;
}

/** The part as the solver is asked for it: itself, or its strips, each worth its share. */
export function partMade(job: Job, part: Part, { strips, match }: WayToMake): Part {
  if (strips === 1 || match === null) return part;
  const value = part.value ?? (part.length * part.width) / 8128 ** 2;
  return {
    ...partWithBlank(part, job.shop, blankOf(part, job.shop, strips)),
    quantity: part.quantity * strips,
    grain: 'along',
    value: value / strips,
    match,
  };
}

/** A sieve through which no board falls that could give a piece. */
function mayServe(job: Job, part: Part, board: Board): boolean {
  if (facesFor(part, board).length === 0) return false;
  if (part.grain === 'along') return holdsRun([part], board, job.shop);
  const area = usable(board, job.shop);
  const { length, width } = blankOf(part, job.shop, 1);
  const fits = (long: number, wide: number): boolean => area.length >= long && area.width >= wide;
  return fits(length, width) || fits(width, length);
}
