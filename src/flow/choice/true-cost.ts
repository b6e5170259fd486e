import type { Job } from '../stock/job.ts';
import type { Choice } from './choice.ts';
import type { Instance } from './instance.ts';
import type { Plan } from './plan.ts';
import type { SolveOptions } from './progress.ts';

/** So many of the best plans met are cut up to see what they cost once their offcuts are known. */
const mostTried = 6;

/** A plan dearer by more than this share, by the solver's measure, is not. */
const nearBy = 0.02;

/** Work that cutting up one plan counts for. */
const workPerPlan = 400_000;

/** The plan, if it lays out everything, put among the best met; of plans that cost the same by the solver's measure the first. */
export function keptNear(near: readonly Plan[], plan: Plan): readonly Plan[] {
  if (plan.missing.some((count) => count > 0)) return near;
  const same = (other: Plan): boolean =>
    Math.abs(other.objective - plan.objective) < 1e-9 * (1 + plan.objective);
  if (near.some((other) => same(other))) return near;
  return [...near, plan].sort((a, b) => a.objective - b.objective).slice(0, mostTried);
}

/** The choice with what it costs once its cuts are known, where that is another thing than the solver's measure. */
function withTrueCost(job: Job, choice: Choice, { costOf }: SolveOptions): Choice {
  const { shop } = job;
  if (costOf === undefined || shop.goal !== 'least cost' || shop.offcutCredit === 0) return choice;
  const value = costOf(job, choice);
  const bound = Math.min(value, choice.proof.bound);
  const apart = value - bound;
  const proven = apart <= 1e-7 * (1 + Math.abs(value));
  const gap = proven ? 0 : value === 0 ? 1 : apart / Math.abs(value);
  return { ...choice, proof: { value, bound: proven ? value : bound, gap, proven } };
}

/**
 * The answer of a solve: the best plan; where offcuts earn credit, which is known only once a plan is cut up, the one of the
 * best few that costs least then. Yields between plans.
 * @param near plans met, that one among them or not
 * @param choiceOf a plan as a choice for the job
 */
export function* cheapestChoice(
  job: Job,
  instance: Instance,
  { best, near }: { readonly best: Plan; readonly near: readonly Plan[] },
  options: SolveOptions,
  choiceOf: (plan: Plan) => Choice,
): Generator<void, Choice, void> {
  const choice = choiceOf(best);
  if (choice.short.length > 0) return choice;
  let cheapest = withTrueCost(job, choice, options);
  if (cheapest === choice) return choice;
  const rivals = near.filter(
    ({ objective }) => objective > best.objective && objective <= best.objective * (1 + nearBy),
  );
  for (const plan of rivals) {
    yield;
    if (options.stop?.() === true) break;
    instance.meter.spent += workPerPlan;
    const other = withTrueCost(job, choiceOf(plan), options);
    if (other.proof.value < cheapest.proof.value - 1e-9) cheapest = other;
  }
  return cheapest;
}
