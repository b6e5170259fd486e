import type { Highs } from 'highs';
import { describeFault } from '../../../src/flow/check/describe-fault.ts';
import { verify } from '../../../src/flow/check/verify.ts';
import type { Choice, Proof } from '../../../src/flow/choice/choice.ts';
import { chooseMatching } from '../../../src/flow/choice/choose-matching.ts';
import type { SolveOptions } from '../../../src/flow/choice/progress.ts';
import { layOut } from '../../../src/flow/cuts/lay-out.ts';
import type { Job } from '../../../src/flow/stock/job.ts';
import { bestTotal, penalties } from './best-layout.ts';
import type { TinyJob } from './tiny-job.ts';

/** What an answer is worth beside the best there is. */
export interface Judgement {
  /** Everything wrong with it, in words. */
  readonly wrong: readonly string[];
  readonly proven: boolean;
  /** Whether it is as good as the best. */
  readonly isBest: boolean;
}

/** A solve of a tiny job that takes more steps than this is taken to go on for ever. */
const mostSteps = 6000;

/** Solves the job; null when it does not come to an end. */
export function solveWithin(job: Job, options: SolveOptions, most: number = mostSteps): Choice | null {
  const solve = chooseMatching(job, options);
  for (let count = 0; count < most; count += 1) {
    const step = solve.next();
    if (step.done === true) return step.value;
  }
  return null;
}

/** The best total over the tones that what shows may have. */
function bestOverTones(highs: Highs, tiny: TinyJob): number {
  const { shop, parts, boards } = tiny.job;
  const isBound = shop.showTone === 'one' && parts.some(({ show, quantity }) => show > 0 && quantity > 0);
  if (!isBound) return bestTotal(highs, tiny);
  return Math.min(
    ...[...new Set(boards.map(({ tone }) => tone))].map((tone) => bestTotal(highs, tiny, tone)),
  );
}

/** What is wrong with a proof beside the best value there is; money, or worth, to a millionth of the whole. */
function wrongWith(proof: Proof, best: number, sign: 1 | -1, slack: number): string[] {
  const { value, bound, proven } = proof;
  const wrong: string[] = [];
  // No layout costs less than nothing, so a bound of 0 is one, even where a better answer would leave fewer parts out.
  const least = sign > 0 ? Math.max(0, best) : best;
  if (sign * (bound - least) > slack) wrong.push(`bound ${bound} beyond the best, ${best} (value ${value})`);
  if (sign * (best - value) > slack) wrong.push(`value ${value} better than the best, ${best}`);
  if (proven && Math.abs(value - best) > slack) wrong.push(`proven at ${value}, but the best is ${best}`);
  return wrong;
}

/**
 * Solves a tiny job and holds the answer against every rule and against the best over all ways to cut all boards. Where
 * parts are left out, the best is the best total of cost and penalties, less the penalties of those same parts.
 */
export function judge(highs: Highs, tiny: TinyJob, options: SolveOptions): Judgement {
  const { job } = tiny;
  const choice = solveWithin(job, options);
  if (choice === null) return { wrong: ['it goes on and on'], proven: false, isBest: false };
  const layout = layOut(job, choice);
  const faults = verify(job, layout).map((fault) => describeFault(fault));
  const penalty = penalties(tiny);
  const lacking = choice.short.reduce((sum, { part, copies }) => sum + penalty[part]! * copies, 0);
  const total = bestOverTones(highs, tiny);
  const isMost = job.shop.goal === 'most value';
  const all = job.parts.reduce((sum, { quantity }, part) => sum + quantity * penalty[part]!, 0);
  const best = isMost ? all - total : total - lacking;
  const slack = 1e-6 * (1 + Math.abs(best) + (isMost ? 0 : lacking));
  const sign = isMost ? -1 : 1;
  // Before the offcuts are known the value is only a bound on the cost.
  const { value, bound: told } = layout.proof;
  // With parts short the layout tells no bound: the solver's own is judged, beside what the layout costs with its offcuts.
  const bound = told ?? (isMost ? choice.proof.bound : Math.min(value, choice.proof.bound));
  const proven = told === null ? Math.abs(value - bound) <= slack : layout.proof.proven;
  const said: Proof = { value, bound, gap: layout.proof.gap ?? 0, proven };
  const proofs = job.shop.offcutCredit > 0 ? [said] : [said, choice.proof];
  const wrong = new Set(proofs.flatMap((proof) => wrongWith(proof, best, sign, slack)));
  return { wrong: [...faults, ...wrong], proven, isBest: Math.abs(value - best) <= slack };
}
