import type { Board } from '../../../flow/stock/board.ts';
import type { Job } from '../../../flow/stock/job.ts';
import { type Steps, within } from '../../../flow/choice/progress.ts';
import { type Copies, type PlanSolvers, type YardPlan, cheapestPlan, yardJob } from './yard-job.ts';

/** What may be taken, and the cheapest choice of that; null: not asked for yet, and none costs less than `atLeast`. */
interface Node {
  readonly allowed: Copies;
  readonly plan: YardPlan | null;
  readonly atLeast: number;
  /** Name of the board that it goes without. */
  readonly without: string;
}

/**
 * The cheapest choices at the yard, cheapest first: the best one, then each next choice that does not merely add boards
 * to a cheaper one.
 *
 * After Lawler (1972): any other choice leaves out at least one board that the best one takes. So the next best is the
 * cheapest among the best choices with one taken board forbidden, each in turn; and so on from there. (A row of several
 * equal boards is forbidden one copy at a time: which copy is left out makes no difference.) A choice is asked for only when
 * nothing known is cheaper than it may be.
 * @param count how many choices to look for, ≥ 1
 * @param solvers `least`: a quick bound on what the allowed boards must cost; 0 says nothing
 * @returns fewer when there are no more, or when it was ended early; empty when the job does not come out at all, or nothing
 * was found before that
 */
export function* cheapestPlans(
  owned: Job,
  yard: readonly Board[],
  count: number,
  solvers: PlanSolvers,
): Steps<YardPlan[]> {
  const { least } = solvers;
  const open: Node[] = [];
  const asked = new Set<string>();
  const put = (allowed: Copies, without: string, known: number): void => {
    const key = allowed.join(' ');
    if (asked.has(key)) return;
    asked.add(key);
    const atLeast = Math.max(known, least(yardJob(owned, yard, allowed).job));
    if (atLeast < Infinity) open.push({ allowed, without, plan: null, atLeast });
  };
  const found: YardPlan[] = [];
  const all = yard.map(({ quantity }) => quantity);
  open.push({ allowed: all, without: '', plan: null, atLeast: 0 });
  while (open.length > 0 && found.length < count && solvers.stop?.() !== true) {
    const node = open.splice(cheapestOf(open), 1)[0]!;
    const { allowed, plan, without } = node;
    if (plan === null) {
      const isFirst = without === '';
      const asked = { ...solvers, least: isFirst ? least : () => node.atLeast };
      const doing = isFirst ? 'choosing boards' : `choosing again without ${without}`;
      const steps = cheapestPlan(owned, yard, allowed, asked, doing);
      const best = yield* within(steps, (plan) => (isFirst ? plan && [plan] : found));
      if (best !== null) open.push({ ...node, plan: best, atLeast: best.money });
      continue;
    }
    if (!found.some((known) => addsOnly(plan.taken, known.taken))) found.push(plan);
    if (found.length === count) break;
    for (const [row, copies] of plan.taken.entries()) {
      if (copies === 0) continue;
      const fewer = allowed.map((limit, at) => (at === row ? copies - 1 : limit));
      put(fewer, yard[row]!.name, plan.atLeast);
    }
  }
  // Ended between the first choice and the look at the next ones.
  if (found.length === 0)
    found.push(...open.flatMap(({ plan }) => (plan === null ? [] : [plan])).slice(0, 1));
  // Short of a proof the solver may find a cheaper choice among fewer boards: then that one is the best.
  return found.sort((a, b) => a.money - b.money).filter(isNew);
}

/** Of what may be cheapest, what is known first. */
function cheapestOf(open: readonly Node[]): number {
  return open.reduce((best, { atLeast, plan }, index) => {
    const known = open[best]!;
    const isKnown = plan !== null && known.plan === null;
    return atLeast < known.atLeast || (atLeast === known.atLeast && isKnown) ? index : best;
  }, 0);
}

/** Whether a choice is no cheaper one with boards added. */
function isNew({ taken }: YardPlan, index: number, plans: readonly YardPlan[]): boolean {
  return !plans.slice(0, index).some((known) => addsOnly(taken, known.taken));
}

/** Whether the first choice is the second, or that and more. */
function addsOnly(taken: Copies, known: Copies): boolean {
  return known.every((copies, row) => taken[row]! >= copies);
}
