import { overlaps, type Rectangle } from '../../base/geometry/rectangle.ts';
import type { Tick } from '../../base/units/tick.ts';
import type { Defect } from '../stock/defect.ts';

/**
 * Knots of a parent board that lie off a region cut from it, but no farther than the margin that is kept round knots:
 * the grain that swirls round them runs into the region.
 *
 *     parent  |---(knot)-[====region====]---|      the knot is told at −(its distance), and keeps its size
 *
 * @param margin how far round a knot the wood is to be avoided, ticks
 * @returns in the region's own coordinates, whole: what is kept clear of them is then what was kept clear on the parent
 */
export function knotsBeside(defects: readonly Defect[], region: Rectangle, margin: Tick): readonly Defect[] {
  const reach = {
    x: region.x - margin,
    y: region.y - margin,
    length: region.length + 2 * margin,
    width: region.width + 2 * margin,
  };
  return defects
    .filter((defect) => isKnot(defect) && overlaps(defect, reach) && !overlaps(defect, region))
    .map((defect) => ({ ...defect, x: defect.x - region.x, y: defect.y - region.y }));
}

/** Defects apart: those on a piece, and those that lie off it. */
export function parted(
  defects: readonly Defect[],
  piece: { readonly length: number; readonly width: number },
): { readonly on: readonly Defect[]; readonly beside: readonly Defect[] } {
  const whole = { x: 0, y: 0, length: piece.length, width: piece.width };
  const isOn = (defect: Defect): boolean => overlaps(defect, whole) || !isKnot(defect);
  return { on: defects.filter(isOn), beside: defects.filter((defect) => !isOn(defect)) };
}

function isKnot({ kind }: Defect): boolean {
  return kind.endsWith('knot');
}
