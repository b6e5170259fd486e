import type { MantelPlan } from '../plan/plan-mantel.ts';
import { type RunGroups, facingRun } from '../plan/run-break.ts';
import type { Part } from './part.ts';

/** What the facing's run is called; when it is broken, `facing 1`, `facing 2` … from the left. */
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
    grain: 'along',
    quality: piece.quality,
    show: piece.show,
    accept: [],
    run: inRun.has(piece.name) ? runName : null,
    leftEnd: piece.leftEnd,
    rightEnd: piece.rightEnd,
    glueUp: piece.glueUp,
    value: null,
    pin: null,
    note: piece.note,
  }));
}

/**
 * The same parts with the facing's run broken into these groups (see `breakRun`). A group of one piece is free.
 * Parts that are in no group stay as they are.
 */
export function withRunGroups(parts: readonly Part[], groups: RunGroups): Part[] {
  const runs = new Map<string, string | null>();
  groups.forEach((group, index) => {
    const name = group.length === 1 ? null : groups.length === 1 ? runName : `${runName} ${index + 1}`;
    for (const piece of group) runs.set(piece, name);
  });
  return parts.map((part) => {
    const run = runs.get(part.name);
    return run === undefined ? part : { ...part, run };
  });
}
