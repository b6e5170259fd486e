import { blankOf } from '../parts/blank.ts';
import type { Part } from '../parts/part.ts';
import type { Job } from '../stock/job.ts';
import { holdsRun } from '../stock/run-strip.ts';
import { usable } from '../stock/usable.ts';
import { facesFor } from './build-instance.ts';
import type { Choice } from './choice.ts';
import { chooseGlued, withBound } from './glue-up/choose-glued.ts';
import { valueOf } from './kinds.ts';
import { type Progress, type Solve, type SolveOptions, within } from './progress.ts';

/** Below this share two values are one. */
const tolerance = 1e-7;

/** What came of looking in one tone; null where it was given up, since it could not beat what was found before. */
type Attempt = { readonly tone: string; readonly choice: Choice } | null;

/**
 * As `choose`, with all parts that show cut from boards of one tone, unless the shop says `any`: each tone is solved by
 * itself and the best answer kept (the solver's bound knows no tones). A board without a tone matches its like only.
 *
 * The bound is the least of all tones' bounds (the greatest under `most value`). A tone is left out of it only when
 * no board of the tone could hold some part that shows, while the answer lays out every part; or when its own bound
 * is already no better than the answer.
 */
export function* chooseInTone(job: Job, options: SolveOptions): Solve {
  const tones = tonesOf(job);
  if (tones.length < 2) return yield* chooseGlued(job, options);
  const able = tones.filter((tone) => canShow(inTone(job, tone)));
  const rest = tones.filter((tone) => !able.includes(tone));
  const attempts = yield* attempt(job, able, options, []);
  const best = bestOf(job, attempts);
  if (best !== null && best.short.length === 0 && job.shop.goal === 'least cost')
    return bounded(job, best, attempts);
  const all = yield* attempt(job, rest, options, attempts);
  return bounded(job, bestOf(job, all)!, all);
}

/** The tones to choose from: of every board, in order of appearance; none where nothing asks for one. */
function tonesOf(job: Job): string[] {
  const shows = job.parts.some(({ show, quantity }) => show > 0 && quantity > 0);
  if (job.shop.showTone === 'any' || !shows) return [];
  return [...new Set(job.boards.map(({ tone }) => tone))];
}

/** The job with all its parts that show bound to one tone. */
function inTone(job: Job, tone: string): Job {
  return { ...job, parts: job.parts.map((part) => (part.show > 0 ? { ...part, tone } : part)) };
}

/** Whether each part that shows would fit on some board by itself: a first sieve, from which no way to cut falls through. */
function canShow(job: Job): boolean {
  const wanted = job.parts.filter(({ show, quantity }) => show > 0 && quantity > 0);
  return wanted.every((part) =>
    job.boards.some((board) => {
      if (facesFor(part, board).length === 0) return false;
      return part.glueUp > 1 || part.grain !== 'along'
        ? mayHold(part, usable(board, job.shop), job)
        : holdsRun([part], board, job.shop);
    }),
  );
}

/** Whether the narrowest blanks of the part fit the area, whichever way they lie. */
function mayHold(part: Part, area: { length: number; width: number }, job: Job): boolean {
  const { length, width } = blankOf(part, job.shop, part.glueUp);
  const fits = (long: number, wide: number): boolean => area.length >= long && area.width >= wide;
  return fits(length, width) || (part.grain !== 'along' && fits(width, length));
}

function* attempt(
  job: Job,
  tones: readonly string[],
  options: SolveOptions,
  before: readonly Attempt[],
): Generator<Progress<Choice>, Attempt[], void> {
  const attempts = [...before];
  // Nothing bounds all tones before each is looked at.
  const soFar = (choice: Choice | null): Choice | null => {
    const best = bestOf(job, [...attempts, choice === null ? null : { tone: '', choice }]);
    return best === null ? null : withBound(job, best, null);
  };
  for (const tone of tones) {
    const limit = limitOf(job, bestOf(job, attempts));
    const solve = unlessWorse(chooseGlued(inTone(job, tone), options), limit);
    const choice = yield* within(solve, soFar);
    attempts.push(choice === null ? null : { tone, choice });
    if (options.untilKnown === true && choice?.short.length === 0) break;
  }
  return attempts;
}

/** The solver's own measure of an answer that lays out everything, which another must stay below; else no limit. */
function limitOf(job: Job, best: Choice | null): number {
  if (best === null) return Infinity;
  if (job.shop.goal === 'least cost') return best.short.length > 0 ? Infinity : best.proof.value;
  return job.parts.reduce((sum, part) => sum + part.quantity * valueOf(part), 0) - best.proof.value;
}

/** Drives a solve until it ends, or until its bound says that it cannot come below the limit. */
function* unlessWorse(solve: Solve, limit: number): Generator<Progress<Choice>, Choice | null, void> {
  for (;;) {
    const step = solve.next();
    if (step.done === true) return step.value;
    const { bound } = step.value;
    if (bound !== null && bound >= limit - tolerance * (1 + Math.abs(limit))) return null;
    yield step.value;
  }
}

function missing(job: Job, { short }: Choice): number {
  return short.reduce((sum, { part, copies }) => sum + copies * Math.max(valueOf(job.parts[part]!), 1e-9), 0);
}

/** Fewest short first, by worth; then the goal's value. The first of equals. */
function bestOf(job: Job, attempts: readonly Attempt[]): Choice | null {
  const sign = job.shop.goal === 'most value' ? -1 : 1;
  let best: Choice | null = null;
  for (const given of attempts) {
    if (given === null) continue;
    const { choice } = given;
    const apart = best === null ? -1 : missing(job, choice) - missing(job, best);
    if (best === null || apart < -tolerance) best = choice;
    else if (apart <= tolerance && sign * choice.proof.value < sign * best.proof.value) best = choice;
  }
  return best;
}

/** What is known of layouts that have all parts, in any tone. */
function lackOf(attempts: readonly Attempt[]): Pick<Choice, 'leastWhole' | 'cannotHold'> {
  const choices = attempts.flatMap((given) => (given === null ? [] : [given.choice]));
  const leastWhole = Math.min(...choices.map((choice) => choice.leastWhole ?? 0));
  const isNone = choices.length === attempts.length && choices.every(({ cannotHold }) => cannotHold === true);
  return { leastWhole, ...(isNone ? { cannotHold: true } : {}) };
}

/** The answer with a bound that holds for every tone. */
function bounded(job: Job, best: Choice, attempts: readonly Attempt[]): Choice {
  const { value } = best.proof;
  const isMost = job.shop.goal === 'most value';
  const bounds = attempts.flatMap((given) => {
    if (given === null) return [];
    const { short, proof, leastWhole } = given.choice;
    // A proven answer with parts short, beside one without: this tone cannot lay everything out.
    const isLacking = !isMost && best.short.length === 0 && short.length > 0;
    if (isLacking && proof.proven) return [];
    return [isLacking ? Math.max(proof.bound, leastWhole ?? 0) : proof.bound];
  });
  const bound = isMost ? Math.max(value, ...bounds) : Math.min(value, ...bounds);
  const apart = Math.abs(value - bound);
  const proven = apart <= tolerance * (1 + Math.abs(value));
  const { patterns, short } = best;
  const gap = proven ? 0 : value === 0 ? 1 : apart / Math.abs(value);
  const proof = { value, bound: proven ? value : bound, gap, proven };
  return { patterns, short, proof, ...(short.length > 0 && !isMost ? lackOf(attempts) : {}) };
}
