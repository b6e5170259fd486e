import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Part } from '../parts/part.ts';
import type { Shop } from '../shop/shop.ts';
import { type Defect, type Face, isUnsound, liesOn } from './defect.ts';

/** Whether the maker welcomes this defect on the part's show face: kind listed, and no larger either way than said. */
export function welcome(part: Part, defect: Defect): boolean {
  return part.accept.some(
    (accepted) =>
      accepted.kind === defect.kind &&
      (accepted.atMost === null || (defect.length <= accepted.atMost && defect.width <= accepted.atMost)),
  );
}

/**
 * Whether a piece of the part must keep clear of the defect when `show` is its show face (DESIGN, section 6):
 * clear-1 wants the show face free of all that is not welcome and the back sound, clear-2 both faces free
 * (welcome ones allowed on the show face only), sound no unsound defect on either face, any nothing.
 */
export function blocks(part: Part, defect: Defect, show: Face): boolean {
  const back: Face = show === 'A' ? 'B' : 'A';
  switch (part.quality) {
    case 'any':
      return false;
    case 'sound':
      return isUnsound(defect.kind);
    case 'clear-1':
      return (
        (liesOn(defect, show) && !welcome(part, defect)) || (liesOn(defect, back) && isUnsound(defect.kind))
      );
    case 'clear-2':
      return (liesOn(defect, show) && !welcome(part, defect)) || liesOn(defect, back);
  }
}

/** The wood a defect takes: knots grow by the shop's knot margin on every side. Board coordinates. */
export function extent(defect: Defect, shop: Shop): Rectangle {
  const margin = defect.kind.endsWith('knot') ? shop.knotMargin : 0;
  return {
    x: defect.x - margin,
    y: defect.y - margin,
    length: defect.length + 2 * margin,
    width: defect.width + 2 * margin,
  };
}
