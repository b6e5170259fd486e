import type { MantelPlan } from '../plan/plan-mantel.ts';
import { facingRun } from '../plan/run-break.ts';
import type { Shop } from '../shop/shop.ts';
import type { Part } from './part.ts';

/** What the facing's run is called. */
export const runName = 'facing';

/**
 * The parts of a planned mantel, in the plan's order. The facing's pieces are proposed as one run, so that the grain wraps the
 * corners: cap, return, front, return, cap.
 */
export function planParts(plan: MantelPlan): Part[] {
  const inRun = new Set(facingRun(plan).map(({ name }) => name));
  return plan.pieces.map((piece) => ({
    name: piece.name,
    quantity: 1,
    length: piece.length,
    width: piece.width,
    thickness: piece.thickness,
    // What does not show may be of any wood.
    species: piece.show > 0 ? plan.mantel.species : '',
    grain: 'along',
    quality: piece.quality,
    show: piece.show,
    accept: [],
    run: inRun.has(piece.name) ? runName : null,
    leftEnd: piece.leftEnd,
    rightEnd: piece.rightEnd,
    ...(piece.extraLength > 0 ? { extraLength: piece.extraLength } : {}),
    ...(piece.extraWidth > 0 ? { extraWidth: piece.extraWidth } : {}),
    glueUp: piece.glueUp,
    value: null,
    pin: null,
    note: piece.note,
  }));
}

/** Whether a layout may break the run where it must: the plan's own; one that a person wrote only if the shop says so. */
export function mayBreak(run: string, { ownRuns }: Shop): boolean {
  return run === runName || ownRuns === 'may break';
}
