import { blankOf } from '../parts/blank.ts';
import { type Match, isAskedFor, matchesOf, suits } from '../parts/match.ts';
import type { Part } from '../parts/part.ts';
import type { Job } from '../stock/job.ts';
import { holdsRun } from '../stock/run-strip.ts';
import { usable } from '../stock/usable.ts';
import { speciesKey } from '../../trade/species.ts';
import { facesFor } from './build-instance.ts';

/** Jobs that differ in the species and tone that what shows is bound to; together they allow all that the job allows. */
export interface Matchings {
  /** At least one, unless there are `unable` ones. */
  readonly able: readonly Job[];
  /** Those in which it is plain that some part that shows cannot be laid out. */
  readonly unable: readonly Job[];
}

/** Parts that show and ask for one species, or for none, and the matches that they may be bound to together. */
interface Shown {
  readonly asked: string;
  readonly parts: ReadonlySet<Part>;
  readonly matches: readonly Match[];
}

/**
 * The job with its parts bound to species and tones in each way that the rules allow, in the order of the boards: parts
 * that show and name no species are all of one, those that name one all of the same wood (oak is red oak or white oak);
 * what shows of one species is of one tone. A part that names a species and does not show is bound to that alone. The
 * shop may leave the species of what shows, or its tone, open (`show species`, `show tone`); one that is named holds.
 */
export function matchings(job: Job): Matchings {
  const bound = { ...job, parts: job.parts.map((part) => boundToAsked(job, part)) };
  const groups = shownGroups(bound);
  const able = groups.map(({ parts, matches }) => matches.map((match) => canShow(bound, [...parts], match)));
  const jobs: { readonly job: Job; readonly isAble: boolean }[] = [];
  for (const picks of everyPick(groups.map(({ matches }) => matches.length))) {
    const chosen = groups.map(({ matches }, at) => matches[picks[at]!]!);
    if (!agreeInTone(chosen)) continue;
    const parts = bound.parts.map((part) => {
      const at = groups.findIndex((group) => group.parts.has(part));
      return at < 0 || isFree(chosen[at]!) ? part : { ...part, match: chosen[at]! };
    });
    jobs.push({ job: { ...job, parts }, isAble: groups.every((_, at) => able[at]![picks[at]!]) });
  }
  return {
    able: jobs.flatMap((one) => (one.isAble ? [one.job] : [])),
    unable: jobs.flatMap((one) => (one.isAble ? [] : [one.job])),
  };
}

/** A part that names a species, bound to the boards' names for it; unbound where all boards are of it. */
function boundToAsked({ boards }: Job, part: Part): Part {
  if (part.species === '' || part.match !== undefined) return part;
  const names = [...new Set(boards.map(({ species }) => species))];
  const own = names.filter((name) => isAskedFor(name, part.species));
  return own.length === names.length ? part : { ...part, match: { species: own, tone: null } };
}

/** The parts that show, by the species they ask for. Nothing is left open where no board is at hand, or all boards match. */
function shownGroups({ shop, parts, boards }: Job): Shown[] {
  const groups = new Map<string, Set<Part>>();
  for (const part of parts) {
    if (part.show <= 0 || part.quantity <= 0) continue;
    const asked = speciesKey(part.species);
    groups.set(asked, (groups.get(asked) ?? new Set()).add(part));
  }
  return [...groups].flatMap(([asked, own]) => {
    const [first] = [...own];
    const all = matchesOf(boards.filter((board) => suits(first!, board)));
    const anySpecies = shop.showSpecies === 'any' && asked === '';
    const loose = all.map(({ species, tone }) => ({
      species: anySpecies ? null : species,
      tone: shop.showTone === 'any' ? null : tone,
    }));
    const matches = [...new Map(loose.map((match) => [JSON.stringify(match), match])).values()];
    return matches.length === 0 ? [] : [{ asked, parts: own, matches }];
  });
}

function isFree({ species, tone }: Match): boolean {
  return species === null && tone === null;
}

/** Whether matches of one species are of one tone. */
function agreeInTone(matches: readonly Match[]): boolean {
  const tones = new Map<string, string | null>();
  return matches.every(({ species, tone }) => {
    const key = JSON.stringify(species);
    if (!tones.has(key)) tones.set(key, tone);
    return tones.get(key) === tone;
  });
}

function* everyPick(counts: readonly number[]): Generator<number[]> {
  const [first, ...rest] = counts;
  if (first === undefined) return yield [];
  for (let at = 0; at < first; at += 1) for (const others of everyPick(rest)) yield [at, ...others];
}

/**
 * Whether each of the parts, bound so, would fit on some board by itself, and all of them on the boards by area: a first
 * sieve, from which no way to cut falls through.
 */
function canShow(job: Job, parts: readonly Part[], match: Match): boolean {
  const own = parts.map((part) => (isFree(match) ? part : { ...part, match }));
  const serving = job.boards.filter((board) => own.some((part) => facesFor(part, board).length > 0));
  const wood = serving.reduce((sum, board) => {
    const { length, width } = usable(board, job.shop);
    return sum + board.quantity * Math.max(0, length) * Math.max(0, width);
  }, 0);
  const wanted = own.reduce((sum, part) => {
    const { length, width } = blankOf(part, job.shop, 1);
    return sum + part.quantity * length * width;
  }, 0);
  return wanted <= wood && own.every((part) => serving.some((board) => mayHold(part, board, job)));
}

/** Whether the board may hold the part, or the narrowest of its strips, whichever way it lies. */
function mayHold(part: Part, board: Job['boards'][number], job: Job): boolean {
  if (facesFor(part, board).length === 0) return false;
  if (part.glueUp <= 1 && part.grain === 'along') return holdsRun([part], board, job.shop);
  const area = usable(board, job.shop);
  const { length, width } = blankOf(part, job.shop, part.glueUp);
  const fits = (long: number, wide: number): boolean => area.length >= long && area.width >= wide;
  return fits(length, width) || (part.grain !== 'along' && fits(width, length));
}
