import { type Result, failure, success } from './base/result/result.ts';
import type { Tick } from './base/units/tick.ts';
import type { Choice } from './flow/choice/choice.ts';
import { type SolveOptions, type Steps, within } from './flow/choice/progress.ts';
import { breakWays } from './flow/choice/runs/break-way.ts';
import { chooseRuns } from './flow/choice/runs/choose-runs.ts';
import { sieveOf } from './flow/choice/runs/could-hold.ts';
import type { RunsChoice } from './flow/choice/runs/runs-choice.ts';
import type { CheckProblem } from './flow/check/fault.ts';
import { verify } from './flow/check/verify.ts';
import { brokenRuns } from './flow/cuts/broken-runs.ts';
import type { Layout } from './flow/cuts/layout.ts';
import { layOut } from './flow/cuts/lay-out.ts';
import { leastToAdd } from './flow/cuts/least-to-add.ts';
import { proofConditions } from './flow/cuts/proof-conditions.ts';
import { layoutCost } from './flow/cuts/layout-cost.ts';
import { isAskedFor } from './flow/parts/match.ts';
import type { Part } from './flow/parts/part.ts';
import { planParts, runName } from './flow/parts/plan-parts.ts';
import type { RunGroups } from './flow/plan/run-break.ts';
import type { Leg, Mantel } from './flow/plan/mantel.ts';
import { type MantelPlan, planMantel } from './flow/plan/plan-mantel.ts';
import type { PlanProblem } from './flow/plan/plan-problem.ts';
import { leaveBest } from './flow/rack/leave-best.ts';
import { nameOffcuts } from './flow/rack/name-offcuts.ts';
import type { Need } from './flow/rack/need.ts';
import { offcutWorth } from './flow/rack/offcut-worth.ts';
import type { Shop } from './flow/shop/shop.ts';
import type { Board } from './flow/stock/board.ts';
import type { Job } from './flow/stock/job.ts';
import { usable } from './flow/stock/usable.ts';

// Read this file first: the whole run, one call for each stage.

/** A mantel worked out, and the parts it is made of. */
export interface PlannedParts {
  readonly plan: MantelPlan;
  readonly parts: readonly Part[];
  /** The facing's run in the stretches for which the boards at hand have room, each by itself; null where there is no run, or no board. */
  readonly wrap: RunGroups | null;
}

/**
 * From wall measurements to parts.
 * Their sizes follow from the measurements alone. The boards decide only how they may be made.
 * @param boards what is at hand: its widest board of the mantel's species decides whether the facing must be glued up
 */
export function planJob(
  shop: Shop,
  mantel: Mantel,
  legs: readonly Leg[],
  boards: readonly Board[],
): Result<PlannedParts, PlanProblem> {
  const own = boards.filter(({ species }) => isAskedFor(species, mantel.species));
  const widestBoard = widestUsable(own, shop);
  const room = { fitGap: shop.fitGap, scribe: shop.scribeAllowance };
  const plan = planMantel(mantel, legs, widestBoard === null ? { room } : { room, widestBoard });
  if (!plan.ok) return failure(plan.problems);
  const parts = planParts(plan.value);
  return success({ plan: plan.value, parts, wrap: wrapOn(boards, parts, shop) });
}

/** A layout, and all that the independent check has against it: nothing, or it must not be shown. */
export interface CheckedLayout {
  /** The job as it was laid out, its runs broken as the layout says. */
  readonly job: Job;
  readonly layout: Layout;
  readonly faults: readonly CheckProblem[];
}

/** What the rack has to say in a layout's offcuts. */
export interface ForRack {
  /** The job as the rack calls it. */
  readonly job: string;
  /** Names that no offcut may get. */
  readonly used: ReadonlySet<string>;
  /** What later jobs may want of the offcuts. */
  readonly needs: readonly Need[];
}

/**
 * From parts and boards to checked cuts, runs broken as far as the boards make it.
 * @param rack names offcuts for it and says which ones to leave; without it they are called after their boards
 * @param asksWhatToAdd where parts are short, which board more would do is looked for
 * @returns a solve in steps: the shell drives it, and may stop it early with the best layout so far
 */
export function* layOutJob(
  job: Job,
  options: SolveOptions,
  rack?: ForRack,
  asksWhatToAdd = false,
): Steps<CheckedLayout> {
  const solve = chooseRuns(job, { ...options, costOf: layoutCost() });
  const steps = within(solve, (chosen) => (chosen === null ? null : cutAndChecked(job, chosen, rack)));
  const checked = cutAndChecked(job, yield* steps, rack);
  const { job: laid, layout } = checked;
  if (!asksWhatToAdd || layout.short.length === 0 || job.shop.goal === 'most value') return checked;
  const toAdd = yield* within(leastToAdd(laid, layout, options), () => checked);
  return { ...checked, layout: { ...layout, proof: { ...layout.proof, toAdd } } };
}

function cutAndChecked(job: Job, chosen: RunsChoice, rack: ForRack | undefined): CheckedLayout {
  const { choice } = chosen;
  const laid = chosen.way.job;
  const cut = rack === undefined ? layOut(laid, choice) : layOutForRack(laid, choice, rack);
  const broken = brokenRuns(job, chosen);
  const bare = broken.length === 0 ? cut : { ...cut, broken };
  const layout = { ...bare, proof: { ...bare.proof, under: proofConditions(job, bare) } };
  return { job: laid, layout, faults: verify(job, layout) };
}

function layOutForRack(job: Job, choice: Choice, { job: name, used, needs }: ForRack): Layout {
  const kerf = { rip: job.shop.ripKerf, crosscut: job.shop.crosscutKerf };
  const worth = offcutWorth(needs, kerf);
  return nameOffcuts(layOut(job, leaveBest(job, choice, worth), worth), name, used);
}

/** The first way to break the run of which each stretch has room on some board. */
function wrapOn(boards: readonly Board[], parts: readonly Part[], shop: Shop): RunGroups | null {
  if (boards.length === 0) return null;
  const job = { name: '', shop, parts, boards };
  const ways = breakWays(job);
  const way = ways.find(sieveOf(job)) ?? ways.at(-1);
  return way?.runs.find(({ run }) => run === runName)?.stretches ?? null;
}

/** The widest board once its edges are trimmed; null when there is none to cut from. */
function widestUsable(boards: readonly Board[], shop: Shop): Tick | null {
  const widths = boards.map((board) => usable(board, shop).width as Tick).filter((width) => width > 0);
  return widths.length === 0 ? null : widths.reduce((a, b) => (a > b ? a : b));
}
