import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Defect } from '../stock/defect.ts';
import { clearRectangles } from './clear-rectangles.ts';
import type { Need } from './need.ts';
import type { Extent } from './turn.ts';

/** An offcut as far as its use goes. */
export interface Leftover extends Extent {
  readonly dressedThickness: number;
  readonly defects: readonly Defect[];
}

/** What the saw takes, ticks. */
export interface Kerfs {
  readonly rip: number;
  readonly crosscut: number;
}

/**
 * How useful an offcut will be: the area of parts that it is expected to give when the next need comes by,
 *
 *     U = Σₙ shareₙ · aₙ · max over clear rectangles R of ⌊(R.length + c) / (lₙ + c)⌋ · ⌊(R.width + r) / (wₙ + r)⌋
 *
 * over the needs n of size lₙ × wₙ = aₙ that are no thicker than the offcut; c, r: crosscut and rip kerf. Cutting a
 * clear piece in two never raises U (⌊x⌋ + ⌊y⌋ ≤ ⌊x + y⌋), so one long clear piece is at least as good as three short
 * ones, and better as soon as some need is longer than a short one.
 * @returns square ticks, 0 ≤ U ≤ the offcut's area
 */
export function usefulness(leftover: Leftover, needs: readonly Need[], kerf: Kerfs): number {
  const clear = clearRectangles(leftover);
  let expected = 0;
  for (const need of needs) {
    if (need.thickness > leftover.dressedThickness) continue;
    const most = clear.reduce((best, rectangle) => Math.max(best, copiesIn(rectangle, need, kerf)), 0);
    expected += need.share * need.length * need.width * most;
  }
  return expected;
}

function copiesIn(clear: Rectangle, need: Need, kerf: Kerfs): number {
  const along = Math.floor((clear.length + kerf.crosscut) / (need.length + kerf.crosscut));
  return along * Math.floor((clear.width + kerf.rip) / (need.width + kerf.rip));
}

/** Usefulness of several offcuts together: the sum. */
export function totalUsefulness(leftovers: readonly Leftover[], needs: readonly Need[], kerf: Kerfs): number {
  return leftovers.reduce((sum, leftover) => sum + usefulness(leftover, needs, kerf), 0);
}
