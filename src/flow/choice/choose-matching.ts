import type { Job } from '../stock/job.ts';
import type { Choice } from './choice.ts';
import { choose } from './choose.ts';
import { valueOf } from './kinds.ts';
import { matchings } from './matchings.ts';
import { type Progress, type Solve, type SolveOptions, within } from './progress.ts';

/** Below this share two values are one. */
const tolerance = 1e-7;

/** What came of one matching; null where it was given up, since it could not beat what was found before. */
type Attempt = Choice | null;

/**
 * As `choose`, with parts cut from boards of their species, and all that shows from boards that match (see `matchings`):
 * each matching is solved by itself and the best answer kept (the solver's bound knows none).
 *
 * The bound is the least of all matchings' bounds (the greatest under `most value`). One is left out of it only when it is
 * plain, or proven, that it cannot lay out every part, while the answer does; or when its own bound is already no better
 * than the answer.
 */
export function* chooseMatching(job: Job, options: SolveOptions): Solve {
  const { able, unable } = matchings(job);
  const [only, ...others] = [...able, ...unable];
  if (others.length === 0) return yield* choose(only!, options);
  const attempts = yield* attempt(job, able, options, []);
  const best = bestOf(job, attempts);
  if (best !== null && best.short.length === 0 && job.shop.goal === 'least cost')
    return bounded(job, best, attempts);
  const all = yield* attempt(job, unable, options, attempts);
  return bounded(job, bestOf(job, all)!, all);
}

function* attempt(
  job: Job,
  jobs: readonly Job[],
  options: SolveOptions,
  before: readonly Attempt[],
): Generator<Progress<Choice>, Attempt[], void> {
  const attempts = [...before];
  // Nothing bounds all matchings before each is looked at.
  const soFar = (choice: Choice | null): Choice | null => {
    const best = bestOf(job, [...attempts, choice]);
    return best === null ? null : unbounded(job, best);
  };
  for (const one of jobs) {
    const limit = limitOf(job, bestOf(job, attempts));
    const choice = yield* within(unlessWorse(choose(one, options), limit), soFar);
    attempts.push(choice);
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
  for (const choice of attempts) {
    if (choice === null) continue;
    const apart = best === null ? -1 : missing(job, choice) - missing(job, best);
    if (best === null || apart < -tolerance) best = choice;
    else if (apart <= tolerance && sign * choice.proof.value < sign * best.proof.value) best = choice;
  }
  return best;
}

/** What is known of layouts that have all parts, in any matching. */
function lackOf(attempts: readonly Attempt[]): Pick<Choice, 'leastWhole' | 'cannotHold'> {
  const choices = attempts.flatMap((given) => (given === null ? [] : [given]));
  const leastWhole = Math.min(...choices.map((choice) => choice.leastWhole ?? 0));
  const isNone = choices.length === attempts.length && choices.every(({ cannotHold }) => cannotHold === true);
  return { leastWhole, ...(isNone ? { cannotHold: true } : {}) };
}

/** The answer with no other bound than the one that always holds. */
function unbounded(job: Job, choice: Choice): Choice {
  const { value } = choice.proof;
  const isMost = job.shop.goal === 'most value';
  const all = job.parts.reduce((sum, part) => sum + part.quantity * valueOf(part), 0);
  // An answer that costs nothing is not proven by that, for other parts might be laid out instead.
  const bound = isMost ? Math.max(value, all) : Math.min(value, value === 0 ? -1 : 0);
  const proven = Math.abs(value - bound) <= tolerance * (1 + Math.abs(value));
  const gap = proven ? 0 : value === 0 ? 1 : Math.abs(value - bound) / Math.abs(value);
  const { patterns, short } = choice;
  return { patterns, short, proof: { value, bound: proven ? value : bound, gap, proven } };
}

/** The answer with a bound that holds for every matching. */
function bounded(job: Job, best: Choice, attempts: readonly Attempt[]): Choice {
  const { value } = best.proof;
  const isMost = job.shop.goal === 'most value';
  const bounds = attempts.flatMap((given) => {
    if (given === null) return [];
    const { short, proof, leastWhole } = given;
    // A proven answer with parts short, beside one without: this matching cannot lay everything out.
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
