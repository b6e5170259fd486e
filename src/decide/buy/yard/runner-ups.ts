import type { Board } from '../../../flow/stock/board.ts';
import type { Job } from '../../../flow/stock/job.ts';
import type { Progress } from '../../../flow/choice/progress.ts';
import type { SolveJob } from '../solve-job.ts';
import { type Copies, type YardPlan, cheapestPlan } from './yard-job.ts';

interface Node {
  readonly allowed: Copies;
  readonly plan: YardPlan;
}

/**
 * The cheapest choices at the yard, cheapest first: the best one, then each next choice that does not merely add boards
 * to a cheaper one.
 *
 * After Lawler (1972): any other choice leaves out at least one board that the best one takes. So the next best is the
 * cheapest among the best choices with one taken board forbidden, each in turn; and so on from there. (A row of several
 * equal boards is forbidden one copy at a time: which copy is left out makes no difference.)
 * @param count how many choices to look for, ≥ 1
 * @returns fewer when there are no more; empty when the job does not come out at all
 */
export function* cheapestPlans(
  owned: Job,
  yard: readonly Board[],
  count: number,
  solve: SolveJob,
): Generator<Progress, YardPlan[], void> {
  const all = yard.map(({ quantity }) => quantity);
  const open: Node[] = [];
  const asked = new Set<string>();
  const ask = (allowed: Copies): void => {
    const key = allowed.join(' ');
    if (asked.has(key)) return;
    asked.add(key);
    const plan = cheapestPlan(owned, yard, allowed, solve);
    if (plan !== null) open.push({ allowed, plan });
  };
  const found: YardPlan[] = [];
  yield { doing: 'choosing boards', value: null, bound: null };
  ask(all);
  while (open.length > 0 && found.length < count) {
    open.sort((a, b) => a.plan.money - b.plan.money);
    const { allowed, plan } = open.shift()!;
    if (!found.some((known) => addsOnly(plan.taken, known.taken))) found.push(plan);
    if (found.length === count) break;
    for (const [row, copies] of plan.taken.entries()) {
      if (copies === 0) continue;
      yield { doing: `choosing again without ${yard[row]!.name}`, value: found[0]!.money, bound: null };
      ask(allowed.map((limit, at) => (at === row ? copies - 1 : limit)));
    }
  }
  // Short of a proof the solver may find a cheaper choice among fewer boards: then that one is the best.
  return found.sort((a, b) => a.money - b.money).filter(isNew);
}

/** Whether a choice is no cheaper one with boards added. */
function isNew({ taken }: YardPlan, index: number, plans: readonly YardPlan[]): boolean {
  return !plans.slice(0, index).some((known) => addsOnly(taken, known.taken));
}

/** Whether the first choice is the second, or that and more. */
function addsOnly(taken: Copies, known: Copies): boolean {
  return known.every((copies, row) => taken[row]! >= copies);
}
