import type { Board } from '../../../flow/stock/board.ts';
import type { Job } from '../../../flow/stock/job.ts';
import type { Progress } from '../../../flow/choice/progress.ts';
import type { SolveJob } from '../solve-job.ts';
import type { LeastMoney } from './least-money.ts';
import { type Copies, type YardPlan, cheapestPlan, yardJob } from './yard-job.ts';

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
 * @param least a quick bound on what the allowed boards must cost; 0 says nothing
 * @returns fewer when there are no more; empty when the job does not come out at all
 */
export function* cheapestPlans(
  owned: Job,
  yard: readonly Board[],
  count: number,
  solve: SolveJob,
  least: LeastMoney,
): Generator<Progress, YardPlan[], void> {
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
  yield { doing: 'choosing boards', value: null, bound: null };
  const all = yard.map(({ quantity }) => quantity);
  open.push({ allowed: all, without: '', plan: null, atLeast: 0 });
  while (open.length > 0 && found.length < count) {
    const node = open.splice(cheapestOf(open), 1)[0]!;
    const { allowed, plan, without } = node;
    if (plan === null) {
      if (without !== '')
        yield { doing: `choosing again without ${without}`, value: found[0]?.money ?? null, bound: null };
      const best = cheapestPlan(owned, yard, allowed, solve, without === '' ? least : () => node.atLeast);
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
