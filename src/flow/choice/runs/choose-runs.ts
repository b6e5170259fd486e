import type { Job } from '../../stock/job.ts';
import type { Choice } from '../choice.ts';
import { chooseMatching } from '../choose-matching.ts';
import { type Progress, type SolveOptions, type Steps, retold, within } from '../progress.ts';
import { type BreakWay, breakWays, isFiner } from './break-way.ts';
import { sieveOf } from './could-hold.ts';
import { forMoney } from './for-money.ts';
import { look } from './look.ts';
import { type PassedOver, type RunsChoice, missingWorth, passedBefore } from './runs-choice.ts';

/** Share of the effort for ways that a glance leaves in doubt, all of them together; what is left lays the job out. */
const shareOfDoubt = 0.5;

/** Share of the effort, out of that, for the way in which every piece is free, where a glance leaves it in doubt. */
const shareOfFree = 0.25;

/**
 * As `chooseMatching`, going down the ranking of the ways to break the job's runs only as far as the boards make it: the best
 * way with which all parts are laid out. A glance at a way mostly settles it; better ways that a glance left open are looked at
 * once more, for a share of the effort. Where no way is known to have all parts, the best of those that leave the fewest short.
 * Under `most value` parts may be left out: the best way whose every stretch has room on some board.
 * Where the shop lets grain be broken for money, see `forMoney`.
 */
export function* chooseRuns(job: Job, options: SolveOptions): Steps<RunsChoice> {
  const ways = breakWays(job);
  const passes = sieveOf(job);
  if (job.shop.breakGrain !== null && ways.length > 1) return yield* forMoney(job, ways, passes, options);
  const open = ways.filter((way, index) => index === ways.length - 1 || passes(way));
  const first = open[0]!;
  if (open.length === 1 || job.shop.goal === 'most value') {
    const passed = passedBefore(ways, first, new Map());
    const chosen = (choice: Choice): RunsChoice => ({ way: first, choice, passed, best: null });
    return chosen(yield* within(chooseMatching(first.job, options), (found) => found && chosen(found)));
  }
  const standing = yield* glanced(open, options);
  const { verdicts } = standing;
  let { taken } = standing;
  let left = options.effort - standing.spent;
  if (taken !== null) {
    const inDoubt = open.slice(0, open.indexOf(taken.way)).filter((way) => verdicts.get(way) === 'not found');
    const share = Math.max(0, left - shareOfDoubt * options.effort) / Math.max(1, inDoubt.length);
    for (const way of share > 0 ? inDoubt : []) {
      if (verdicts.get(way) === 'no layout') continue;
      const seen = yield* look(way.job, share, options);
      left -= share;
      if (seen.kind === 'none') ruleOut(verdicts, open, way);
      if (seen.kind !== 'whole') continue;
      taken = { way, choice: seen.choice };
      break;
    }
  }
  const way = taken?.way ?? (yield* leastShort(open, options));
  const isNone = verdicts.get(open.at(-1)!) === 'no layout';
  const passed = passedBefore(ways, way, verdicts);
  const chosen = (choice: Choice): RunsChoice => {
    const better = taken !== null && choice.short.length > 0 ? taken.choice : choice;
    return { way, choice: way === open.at(-1) ? better : ofAnyWay(better, isNone), passed, best: null };
  };
  const steps = chooseMatching(way.job, { ...options, effort: left });
  return chosen(yield* within(steps, (found) => found && chosen(found)));
}

/** The choice with no more said of layouts of all parts than holds however the runs are broken. */
function ofAnyWay(choice: Choice, isNone: boolean): Choice {
  const { patterns, short, proof } = choice;
  return { patterns, short, proof, ...(isNone && short.length > 0 ? { cannotHold: true } : {}) };
}

interface Glanced {
  /** Of ways known not to have all parts, or not found to. */
  readonly verdicts: Map<BreakWay, PassedOver>;
  /** The first way with which all parts are laid out, with the layout that shows it; null where there is none. */
  readonly taken: { readonly way: BreakWay; readonly choice: Choice } | null;
  /** Effort spent beyond glances. */
  readonly spent: number;
}

/**
 * A glance at each way, the best first, until all parts are laid out with one. The last way is looked at second: every layout of
 * another is one of it, so that where it has none, none has.
 */
function* glanced(
  open: readonly BreakWay[],
  options: SolveOptions,
): Generator<Progress<never>, Glanced, void> {
  const verdicts = new Map<BreakWay, PassedOver>();
  const last = open.at(-1)!;
  let free: Choice | null = null;
  let spent = 0;
  for (const way of [open[0]!, last, ...open.slice(1, -1)]) {
    if (verdicts.has(way)) continue;
    if (free !== null && options.stop?.() === true) break;
    let seen = yield* look(way.job, 0, options);
    if (way === last && seen.kind === 'open' && options.effort > 0) {
      // All hangs on it.
      spent = shareOfFree * options.effort;
      seen = yield* look(way.job, spent, options);
    }
    if (seen.kind === 'none') ruleOut(verdicts, open, way);
    else if (seen.kind === 'open') verdicts.set(way, 'not found');
    else if (way === last) free = seen.choice;
    else return { verdicts, taken: { way, choice: seen.choice }, spent };
    if (way === last && free === null) return { verdicts, taken: null, spent };
  }
  return { verdicts, taken: free === null ? null : { way: last, choice: free }, spent };
}

/** Notes that a way has no layout of all parts, and with it all ways that it is finer than. */
function ruleOut(verdicts: Map<BreakWay, PassedOver>, open: readonly BreakWay[], way: BreakWay): void {
  for (const other of open) if (isFiner(way, other)) verdicts.set(other, 'no layout');
}

/** The best way that leaves as little short, by worth, as any does after a first layout. */
function* leastShort(
  open: readonly BreakWay[],
  options: SolveOptions,
): Generator<Progress<never>, BreakWay, void> {
  const last = open.at(-1)!;
  let best = { way: last, missing: Infinity };
  for (const way of [last, ...open.slice(0, -1)]) {
    const steps = chooseMatching(way.job, { ...options, effort: 0 });
    const choice = yield* retold(steps, () => ({ doing: 'what is short', value: null, bound: null }));
    const missing = missingWorth(way.job, choice);
    const most = best.missing;
    if (way === last) best = { way, missing };
    else if (missing <= most + 1e-9) return way;
  }
  return best.way;
}
