import { choose } from '../../../flow/choice/choose.ts';
import { matchings } from '../../../flow/choice/matchings.ts';
import type { Job } from '../../../flow/stock/job.ts';
import { alikeTogether } from '../comes-out/alike-parts.ts';
import { type Split, jobMade, makingsOf, splitsOf } from '../comes-out/making.ts';

/** Money that no complete layout of a job costs less than; Infinity where it has none. Quick, and sometimes below the least. */
export type LeastMoney = (job: Job) => number;

/** Effort for one bound: the root's, and a look at sets of boards. */
const effortToBound = 0.2;

/** Bounds asked for in one matching: on the demo's job the first part decided brings the bound from a tenth below to the least itself. */
const mostAsked = 7;

/**
 * Bounds the cost of a job from below, over all species and tones: a part that may be glued up is replaced by what all its ways to be made have
 * in common, and then, best first, decided, the largest part first.
 */
export function leastMoney(seed: number): LeastMoney {
  return (job) => Math.min(...matchings(job).able.map((each) => inOneMatching(each, seed)));
}

/** Some parts decided, those before `at`; no layout with these decisions costs less than `least`. */
interface Node {
  readonly splits: readonly Split[];
  readonly at: number;
  readonly least: number;
}

function inOneMatching(job: Job, seed: number): number {
  const together = { ...job, parts: alikeTogether(job.parts) };
  const makings = makingsOf(together);
  const none = makings.map((): Split => null);
  const bound = (splits: readonly Split[]): number => boundOf(jobMade(together, makings, splits), seed);
  let open: Node[] = [
    { splits: none, at: makings.filter(({ ways }) => ways.length === 1).length, least: bound(none) },
  ];
  for (let asked = 1; ;) {
    const { splits, at, least } = open[0]!;
    const making = makings[at];
    if (making === undefined || least === Infinity) return least;
    // Of many copies not every split is listed: then nothing is decided.
    const choices = splitsOf(making);
    if (choices === null || asked + choices.length > mostAsked) return least;
    const next = choices.map((split) => splits.map((known, index) => (index === at ? split : known)));
    const nodes = next.map((each) => ({ splits: each, at: at + 1, least: Math.max(least, bound(each)) }));
    asked += nodes.length;
    open = [...open.slice(1), ...nodes].sort((a, b) => a.least - b.least);
  }
}

/** A bound above the price of all boards together says that something must be short. */
function boundOf(job: Job, seed: number): number {
  const all = job.boards.reduce((sum, { cost, quantity }) => sum + cost * quantity, 0) + 1e-6;
  let least = 0;
  const steps = choose(job, { seed, effort: effortToBound, stop: () => least > all });
  for (let step = steps.next(); step.done !== true; step = steps.next())
    least = Math.max(least, step.value.bound ?? 0);
  return least > all ? Infinity : least;
}
