import type { Saving } from '../../shop/shop.ts';
import type { Job } from '../../stock/job.ts';
import type { Choice } from '../choice.ts';
import { chooseMatching } from '../choose-matching.ts';
import { type Progress, type SolveOptions, retold } from '../progress.ts';
import { type BreakWay, isFiner } from './break-way.ts';
import { type PassedOver, type RunsChoice, missingWorth, passedBefore } from './runs-choice.ts';

/** Below this share two values are one. */
const tolerance = 1e-7;

interface Tried {
  readonly way: BreakWay;
  readonly choice: Choice;
  /** What it costs once it is cut up; less is better. Under `most value` its worth, with a minus. */
  readonly cost: number;
  readonly missing: number;
}

/**
 * Every way to break the runs is solved with all the effort, so that none of them, fixed, comes out cheaper at the same effort; but
 * for those that the bound of a finer way shows to be too dear, since every layout of theirs is one of it. Then the best way is
 * taken than which none below it is cheaper by the saving that the shop asks for: with none asked for, the cheapest.
 */
export function* forMoney(
  job: Job,
  ways: readonly BreakWay[],
  passes: (way: BreakWay) => boolean,
  options: SolveOptions,
): Generator<Progress<RunsChoice>, RunsChoice, void> {
  const saving = job.shop.breakGrain!;
  const verdicts = new Map<BreakWay, PassedOver>();
  const open = ways.filter((way, index) => index === ways.length - 1 || passes(way));
  const tried: Tried[] = [];
  // The freest way comes second: its bound holds for all of them.
  const order = open.length === 1 ? open : [open[0]!, open.at(-1)!, ...open.slice(1, -1)];
  for (const [index, way] of order.entries()) {
    if (isSettled(tried, saving) || isTooDear(way, tried, saving)) {
      verdicts.set(way, 'dearer');
      continue;
    }
    tried.push(yield* tryWay(way, options, `break ${index + 1} of ${order.length}`));
  }
  const fewest = job.shop.goal === 'most value' ? Infinity : Math.min(...tried.map(({ missing }) => missing));
  const rivals = open.flatMap((way) =>
    tried.filter((one) => one.way === way && one.missing <= fewest + 1e-9),
  );
  const taken = rivals.find(
    (one, at) => !rivals.slice(at + 1).some((other) => saves(one.cost - other.cost, one.cost, saving)),
  )!;
  for (const { way, choice, missing } of tried) {
    if (missing <= fewest + 1e-9) verdicts.set(way, 'dearer');
    else verdicts.set(way, choice.cannotHold === true ? 'no layout' : 'not found');
  }
  const best = rivals[0]!;
  return {
    way: taken.way,
    choice: withBoundOfAll(job, taken, tried, saving),
    passed: passedBefore(ways, taken.way, verdicts),
    best: best === taken ? null : best.choice,
  };
}

function* tryWay(
  way: BreakWay,
  options: SolveOptions,
  doing: string,
): Generator<Progress<never>, Tried, void> {
  const { job } = way;
  const isMost = job.shop.goal === 'most value';
  const choice = yield* retold(chooseMatching(job, options), (said) => ({
    doing: `${doing}: ${said.doing}`,
    value: said.value,
    bound: null,
  }));
  const cost = isMost ? -choice.proof.value : (options.costOf?.(job, choice) ?? choice.proof.value);
  const missing = isMost ? 0 : missingWorth(job, choice);
  return { way, choice, cost, missing };
}

/** What no layout of a way costs less than; of those with all parts. */
function leastCost({ way, choice }: Tried): number {
  if (way.job.shop.goal === 'most value') return -choice.proof.bound;
  return choice.short.length > 0 ? (choice.leastWhole ?? 0) : choice.proof.bound;
}

/** Whether the best way has all parts, and none below it can save so much. */
function isSettled(tried: readonly Tried[], saving: Saving): boolean {
  const [first, free] = tried;
  if (first === undefined || free === undefined || first.missing > 0) return false;
  return !saves(first.cost - leastCost(free), first.cost, saving);
}

/** Whether something found is cheaper, by more than the saving, than any layout of this way can be. */
function isTooDear(way: BreakWay, tried: readonly Tried[], saving: Saving): boolean {
  const least = Math.max(...tried.filter((one) => isFiner(one.way, way)).map(leastCost));
  const whole = tried.filter(({ missing }) => missing === 0);
  return whole.some(({ cost }) => saves(least - cost, least, saving));
}

function saves(saved: number, cost: number, { of, least }: Saving): boolean {
  const wanted = of === 'money' ? least : least * Math.abs(cost);
  return saved > tolerance * (1 + Math.abs(cost)) && saved >= wanted - tolerance * (1 + Math.abs(cost));
}

/** With no saving asked for, the answer's bound is one on every way; else on layouts broken as this one is. */
function withBoundOfAll(job: Job, taken: Tried, tried: readonly Tried[], { least }: Saving): Choice {
  const { choice } = taken;
  if (least > 0 || choice.short.length > 0 || job.shop.goal === 'most value') return choice;
  const { value } = choice.proof;
  const rivals = tried.filter((one) => one.choice.cannotHold !== true);
  const bound = Math.min(value, ...rivals.map(leastCost));
  const apart = value - bound;
  const proven = apart <= tolerance * (1 + Math.abs(value));
  const gap = proven ? 0 : value === 0 ? 1 : apart / Math.abs(value);
  return { ...choice, proof: { value, bound: proven ? value : bound, gap, proven } };
}
