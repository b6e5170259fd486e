import { type Result, failure, success } from './base/result/result.ts';
import type { Tick } from './base/units/tick.ts';
import { choose } from './flow/choice/choose.ts';
import type { Progress, SolveOptions } from './flow/choice/progress.ts';
import type { CheckProblem } from './flow/check/fault.ts';
import { verify } from './flow/check/verify.ts';
import type { Layout } from './flow/cuts/layout.ts';
import { layOut } from './flow/cuts/lay-out.ts';
import type { Part } from './flow/parts/part.ts';
import { planParts } from './flow/parts/plan-parts.ts';
import type { Leg, Mantel } from './flow/plan/mantel.ts';
import { type MantelPlan, planMantel } from './flow/plan/plan-mantel.ts';
import type { PlanProblem } from './flow/plan/plan-problem.ts';
import { nameOffcuts } from './flow/rack/name-offcuts.ts';
import type { Shop } from './flow/shop/shop.ts';
import type { Board } from './flow/stock/board.ts';
import type { Job } from './flow/stock/job.ts';
import { usable } from './flow/stock/usable.ts';

// Read this file first: the whole run, one call for each stage.

/** A mantel worked out, and the parts it is made of. */
export interface PlannedParts {
  readonly plan: MantelPlan;
  readonly parts: readonly Part[];
}

/**
 * From wall measurements to parts.
 * @param boards what is at hand: its widest board decides which returns are short, and what must be glued up
 */
export function planJob(
  shop: Shop,
  mantel: Mantel,
  legs: readonly Leg[],
  boards: readonly Board[],
): Result<PlannedParts, PlanProblem> {
  const widestBoard = widestUsable(boards, shop);
  const plan = planMantel(mantel, legs, widestBoard === null ? {} : { widestBoard });
  return plan.ok ? success({ plan: plan.value, parts: planParts(plan.value) }) : failure(plan.problems);
}

/** A layout, and all that the independent check has against it: nothing, or it must not be shown. */
export interface CheckedLayout {
  readonly layout: Layout;
  readonly faults: readonly CheckProblem[];
}

/** How the offcuts of a layout are named: for the rack, so that a name is found again on the wood. */
export interface Naming {
  /** The job as the rack calls it. */
  readonly job: string;
  /** Names that are taken. */
  readonly used: ReadonlySet<string>;
}

/**
 * From parts and boards to checked cuts.
 * @param naming names for the rack; without it an offcut is called after its board
 * @returns a solve in steps: the shell drives it, and may stop it early with the best layout so far
 */
export function* layOutJob(
  job: Job,
  options: SolveOptions,
  naming?: Naming,
): Generator<Progress, CheckedLayout, void> {
  const choice = yield* choose(job, options);
  const laid = layOut(job, choice);
  const layout = naming === undefined ? laid : nameOffcuts(laid, naming.job, naming.used);
  return { layout, faults: verify(job, layout) };
}

/** The widest board once its edges are trimmed; null when there is none to cut from. */
function widestUsable(boards: readonly Board[], shop: Shop): Tick | null {
  const widths = boards.map((board) => usable(board, shop).width as Tick).filter((width) => width > 0);
  return widths.length === 0 ? null : widths.reduce((a, b) => (a > b ? a : b));
}
