import type { Choice } from '../../../flow/choice/choice.ts';
import type { Progress } from '../../../flow/choice/progress.ts';
import type { CheckProblem } from '../../../flow/check/fault.ts';
import { verify } from '../../../flow/check/verify.ts';
import type { Layout } from '../../../flow/cuts/layout.ts';
import { layOut } from '../../../flow/cuts/lay-out.ts';
import type { Board } from '../../../flow/stock/board.ts';
import type { Job } from '../../../flow/stock/job.ts';
import type { Solvers } from '../solve-job.ts';
import { cheapestPlans } from './runner-ups.ts';
import { buysAny } from './yard-words.ts';
import { type SpareAnswer, spareAnswer } from './spares.ts';
import { type YardPlan, yardJob } from './yard-job.ts';

/** What to take at the yard. */
export type YardAnswer =
  | {
      readonly kind: 'complete';
      readonly owned: Job;
      readonly yard: readonly Board[];
      readonly best: YardPlan;
      /** The best choice's cuts, and what the independent check has against them: nothing, or it must not be shown. */
      readonly layout: Layout;
      readonly faults: readonly CheckProblem[];
      /** The next choices, cheapest first. */
      readonly runnerUps: readonly YardPlan[];
      /** null when nothing has to be bought, so nothing bought can fail. */
      readonly spares: SpareAnswer | null;
    }
  | {
      /** Not even all boards of the yard complete the job. */
      readonly kind: 'short';
      readonly owned: Job;
      readonly yard: readonly Board[];
      readonly short: readonly { readonly part: string; readonly copies: number; readonly why: string }[];
    };

/**
 * Which boards to take: least money for a complete layout together with what is owned, the runner-ups, and what spare
 * boards add.
 * @param owned its boards are those owned and the rack's; they cost nothing now
 * @param runnerUps how many further choices to look for
 */
export function* yardAnswer(
  owned: Job,
  yard: readonly Board[],
  runnerUps: number,
  solvers: Solvers,
): Generator<Progress, YardAnswer, void> {
  const plans = yield* cheapestPlans(owned, yard, runnerUps + 1, solvers.cheapest, solvers.least);
  const [best, ...others] = plans;
  if (best === undefined) {
    const { job } = yardJob(
      owned,
      yard,
      yard.map(({ quantity }) => quantity),
    );
    return { kind: 'short', owned, yard, short: named(job, solvers.cheapest(job)) };
  }
  const layout = layOut(best.job, best.choice);
  const faults = verify(best.job, layout);
  const spares = buysAny(best) ? yield* spareAnswer(owned, yard, best, solvers) : null;
  return { kind: 'complete', owned, yard, best, layout, faults, runnerUps: others, spares };
}

function named(job: Job, { short }: Choice): { part: string; copies: number; why: string }[] {
  return short.map(({ part, copies, why }) => ({ part: job.parts[part]!.name, copies, why }));
}
