import { type Result, failure, success } from './base/result/result.ts';
import type { Tick } from './base/units/tick.ts';
import type { Choice } from './flow/choice/choice.ts';
import { chooseInTone } from './flow/choice/choose-in-tone.ts';
import { type SolveOptions, type Steps, within } from './flow/choice/progress.ts';
import type { CheckProblem } from './flow/check/fault.ts';
import { verify } from './flow/check/verify.ts';
import type { Layout } from './flow/cuts/layout.ts';
import { layOut } from './flow/cuts/lay-out.ts';
import { layoutCost } from './flow/cuts/layout-cost.ts';
import type { Part } from './flow/parts/part.ts';
import { planParts, withRunGroups } from './flow/parts/plan-parts.ts';
import type { Leg, Mantel } from './flow/plan/mantel.ts';
import { type MantelPlan, planMantel } from './flow/plan/plan-mantel.ts';
import type { PlanProblem } from './flow/plan/plan-problem.ts';
import { breakRun } from './flow/plan/run-break.ts';
import { leaveBest } from './flow/rack/leave-best.ts';
import { nameOffcuts } from './flow/rack/name-offcuts.ts';
import type { Need } from './flow/rack/need.ts';
import { offcutWorth } from './flow/rack/offcut-worth.ts';
import type { Shop } from './flow/shop/shop.ts';
import type { Board } from './flow/stock/board.ts';
import type { Job } from './flow/stock/job.ts';
import { holdsRun } from './flow/stock/run-strip.ts';
import { usable } from './flow/stock/usable.ts';

// Read this file first: the whole run, one call for each stage.

/** A mantel worked out, and the parts it is made of. */
export interface PlannedParts {
  readonly plan: MantelPlan;
  readonly parts: readonly Part[];
}

/**
 * From wall measurements to parts.
 * Their sizes follow from the measurements alone. The boards decide only how they may be made.
 * @param boards what is at hand: its widest board decides whether the facing must be glued up; its longest clear face,
 * how much of the facing's grain can run on round the corners
 */
export function planJob(
  shop: Shop,
  mantel: Mantel,
  legs: readonly Leg[],
  boards: readonly Board[],
): Result<PlannedParts, PlanProblem> {
  const widestBoard = widestUsable(boards, shop);
  const plan = planMantel(mantel, legs, widestBoard === null ? {} : { widestBoard });
  if (!plan.ok) return failure(plan.problems);
  return success({ plan: plan.value, parts: withFittingRun(plan.value, boards, shop) });
}

/** A layout, and all that the independent check has against it: nothing, or it must not be shown. */
export interface CheckedLayout {
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
 * From parts and boards to checked cuts.
 * @param rack names offcuts for it and says which ones to leave; without it they are called after their boards
 * @returns a solve in steps: the shell drives it, and may stop it early with the best layout so far
 */
export function* layOutJob(job: Job, options: SolveOptions, rack?: ForRack): Steps<CheckedLayout> {
  const solve = chooseInTone(job, { ...options, costOf: layoutCost() });
  const steps = within(solve, (choice) => (choice === null ? null : cutAndChecked(job, choice, rack)));
  return cutAndChecked(job, yield* steps, rack);
}

function cutAndChecked(job: Job, choice: Choice, rack: ForRack | undefined): CheckedLayout {
  const layout = rack === undefined ? layOut(job, choice) : layOutForRack(job, choice, rack);
  return { layout, faults: verify(job, layout) };
}

function layOutForRack(job: Job, choice: Choice, { job: name, used, needs }: ForRack): Layout {
  const kerf = { rip: job.shop.ripKerf, crosscut: job.shop.crosscutKerf };
  const worth = offcutWorth(needs, kerf);
  return nameOffcuts(layOut(job, leaveBest(job, choice, worth), worth), name, used);
}

/**
 * The parts with the facing's run whole, or broken in the first way (`breakRun` puts the best first) whose every stretch
 * some board can hold. Where no way fits, every piece is free; where no boards are known, the run stays whole.
 */
function withFittingRun(plan: MantelPlan, boards: readonly Board[], shop: Shop): readonly Part[] {
  const parts = planParts(plan);
  const ways = breakRun(plan);
  if (boards.length === 0 || ways.length === 0) return parts;
  const fits = (group: readonly string[]): boolean => {
    const run = parts.filter(({ name }) => group.includes(name));
    return run.length === 1 || boards.some((board) => holdsRun(run, board, shop));
  };
  const way = ways.find((groups) => groups.every(fits)) ?? ways[0]?.flat().map((name) => [name]) ?? [];
  return withRunGroups(parts, way);
}

/** The widest board once its edges are trimmed; null when there is none to cut from. */
function widestUsable(boards: readonly Board[], shop: Shop): Tick | null {
  const widths = boards.map((board) => usable(board, shop).width as Tick).filter((width) => width > 0);
  return widths.length === 0 ? null : widths.reduce((a, b) => (a > b ? a : b));
}
