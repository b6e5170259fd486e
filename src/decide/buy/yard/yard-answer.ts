import type { Choice } from '../../../flow/choice/choice.ts';
import { type Steps, within } from '../../../flow/choice/progress.ts';
import { type BreakWay, type RunInStretches, breakWays } from '../../../flow/choice/runs/break-way.ts';
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
import { type YardPlan, suffices, yardJob } from './yard-job.ts';

/** What to take at the yard. */
export type YardAnswer =
  | {
      readonly kind: 'complete';
      readonly owned: Job;
      readonly yard: readonly Board[];
      /** Runs that are broken, since with them whole not even all boards were found to complete the job. */
      readonly broken: readonly RunInStretches[];
      readonly best: YardPlan;
      /** The best choice's cuts, and what the independent check has against them: nothing, or it must not be shown. */
      readonly layout: Layout;
      readonly faults: readonly CheckProblem[];
      /** The next choices, cheapest first. */
      readonly runnerUps: readonly YardPlan[];
      /** null when nothing has to be bought, so nothing bought can fail; and when it was ended before they were known. */
      readonly spares: SpareAnswer | null;
      /** Whether it was ended before all runner-ups and spares were looked for. */
      readonly isCutShort: boolean;
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
 * A run is broken in the best way with which the job comes out of all of them.
 * @param asked its boards are those owned and the rack's; they cost nothing now
 * @param runnerUps how many further choices to look for
 * @returns null where it was ended before any choice was found
 */
export function* yardAnswer(
  asked: Job,
  yard: readonly Board[],
  runnerUps: number,
  solvers: Solvers,
): Steps<YardAnswer | null> {
  const { job: owned, runs } = wayAtYard(asked, yard, solvers);
  const broken = runs.filter(({ stretches }) => stretches.length > 1);
  const stopped = (): boolean => solvers.stop?.() === true;
  const answerOf = (plans: readonly YardPlan[], spares: SpareAnswer | null): YardAnswer | null =>
    plans.length === 0 ? null : complete({ owned, broken }, yard, plans, spares, true);
  const choosing = cheapestPlans(owned, yard, runnerUps + 1, solvers);
  const plans = yield* within(choosing, (found) => answerOf(found ?? [], null));
  const [best] = plans;
  if (best === undefined) {
    if (stopped()) return null;
    const { job } = yardJob(
      owned,
      yard,
      yard.map(({ quantity }) => quantity),
    );
    return {
      kind: 'short',
      owned,
      yard,
      short: named(job, yield* within(solvers.cheapest(job), () => null)),
    };
  }
  if (!buysAny(best)) return complete({ owned, broken }, yard, plans, null, stopped());
  // What spares are good for is not known by halves.
  const looking = within(spareAnswer(owned, yard, best, solvers), () => answerOf(plans, null));
  for (let step = looking.next(); !stopped(); step = looking.next()) {
    if (step.done === true) return complete({ owned, broken }, yard, plans, step.value, false);
    yield step.value;
  }
  return answerOf(plans, null);
}

/** The best way to break the job's runs with which it comes out of all boards of the yard; with every piece free where none does. */
function wayAtYard(asked: Job, yard: readonly Board[], { comesOut }: Solvers): BreakWay {
  const ways = breakWays(asked);
  const all = yard.map(({ quantity }) => quantity);
  const found = ways.length > 1 ? ways.find(({ job }) => suffices(job, yard, all, comesOut)) : ways[0];
  return found ?? ways.at(-1)!;
}

/** The answer with its best choice cut up and checked. @param plans at least one, the best first */
function complete(
  { owned, broken }: { readonly owned: Job; readonly broken: readonly RunInStretches[] },
  yard: readonly Board[],
  [first, ...runnerUps]: readonly YardPlan[],
  spares: SpareAnswer | null,
  isCutShort: boolean,
): YardAnswer {
  const best = first!;
  const layout = layOut(best.job, best.choice);
  const faults = verify(best.job, layout);
  return { kind: 'complete', owned, yard, broken, best, layout, faults, runnerUps, spares, isCutShort };
}

function named(job: Job, { short }: Choice): { part: string; copies: number; why: string }[] {
  return short.map(({ part, copies, why }) => ({ part: job.parts[part]!.name, copies, why }));
}
