import { overlaps, type Rectangle } from '../../base/geometry/rectangle.ts';
import type { Defect } from '../stock/defect.ts';
import { turnDefect, type Turn } from './turn.ts';

/**
 * The defects of a parent board that lie on a region cut from it, clipped to the region and told in the region's
 * own coordinates: its corner is the origin, and the region is then turned.
 *
 *     parent  |-----[====region====]---|      a knot across the region's end keeps only the part inside
 *
 * A defect that merely touches the region's edge stays with the neighbour.
 * @param region the offcut on its parent, in the parent's coordinates
 * @param turn how the offcut lies now against how it lay on its parent
 * @returns in the parent's order; cost O(defects)
 * @example carryDefects([knot at 10…12], { x: 11, y: 0, length: 20, width: 5 }, 'as cut') // the knot at 0…1
 */
export function carryDefects(defects: readonly Defect[], region: Rectangle, turn: Turn): readonly Defect[] {
  return defects
    .filter((defect) => overlaps(defect, region))
    .map((defect) => turnDefect(clip(defect, region), region, turn));
}

function clip(defect: Defect, region: Rectangle): Defect {
  const from = Math.max(defect.x, region.x);
  const to = Math.min(defect.x + defect.length, region.x + region.length);
  const low = Math.max(defect.y, region.y);
  const high = Math.min(defect.y + defect.width, region.y + region.width);
  return {
    kind: defect.kind,
    face: defect.face,
    x: from - region.x,
    y: low - region.y,
    length: to - from,
    width: high - low,
  };
}
