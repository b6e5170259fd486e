import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { LaidBoard } from '../cuts/layout.ts';
import type { Shop } from '../shop/shop.ts';
import type { CutFault } from './fault.ts';
import { isSame, isWithin, sharedArea } from './outline.ts';

/** What the replay left, sorted: scrap in square ticks, and what is wrong with pieces and offcuts. */
export interface Sorted {
  readonly scrap: number;
  readonly faults: readonly CutFault[];
}

/**
 * Takes every piece and offcut from the bench; what then lies there is scrap inside the usable area and trim outside.
 * Whatever is long and wide enough to keep must be listed as an offcut, and nothing smaller.
 */
export function sortBench(
  laid: LaidBoard,
  bench: readonly Rectangle[],
  usable: Rectangle,
  shop: Shop,
): Sorted {
  const on = { board: laid.board, copy: laid.copy };
  const faults: CutFault[] = [];
  const rest = [...bench];
  const take = (what: string, region: Rectangle): void => {
    const found = rest.findIndex((workpiece) => isSame(workpiece, region));
    if (found < 0) faults.push({ kind: 'not cut free', on, what });
    else rest.splice(found, 1);
  };
  for (const piece of laid.pieces) take(`${piece.part} copy ${piece.copy}`, piece);
  const keeps = (region: Rectangle): boolean =>
    region.length >= shop.leastOffcutLength && region.width >= shop.leastOffcutWidth;
  for (const offcut of laid.offcuts) {
    take(`offcut ${offcut.id}`, offcut);
    if (!keeps(offcut)) faults.push({ kind: 'offcut too small', on, id: offcut.id });
  }
  let scrap = 0;
  for (const region of rest) {
    if (isWithin(region, usable)) {
      scrap += region.length * region.width;
      if (keeps(region)) faults.push({ kind: 'offcut not listed', on, region });
    } else if (sharedArea(region, usable) > 0) {
      faults.push({ kind: 'not trimmed', on });
    }
  }
  return { scrap, faults };
}
