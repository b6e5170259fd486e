import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Cut, LaidBoard } from '../cuts/layout.ts';
import { isWithin } from './outline.ts';

/**
 * Distinct fence and stop positions of a layout, by the project's measure: a cut that is no trim is set by the size
 * of one of its sides, one that holds a piece if any does; the position that serves most cuts still unset is taken,
 * the larger of equals, until all are set. Rips and crosscuts apart.
 * @param isTrim whether a cut takes off nothing but trim
 */
export function countPositions(
  boards: readonly LaidBoard[],
  isTrim: (laid: LaidBoard, cut: Cut) => boolean,
): number {
  const rips: number[][] = [];
  const crosscuts: number[][] = [];
  for (const laid of boards) {
    for (const cut of laid.cuts) {
      if (isTrim(laid, cut)) continue;
      (cut.kind === 'rip' ? rips : crosscuts).push(choices(cut, laid.pieces));
    }
  }
  return greedyCover(rips) + greedyCover(crosscuts);
}

/** The positions that would make the cut. */
function choices(cut: Cut, pieces: readonly Rectangle[]): number[] {
  const { region, at, kerf } = cut;
  const isCrosscut = cut.kind === 'crosscut';
  const far = isCrosscut ? region.x + region.length : region.y + region.width;
  const sides: readonly Rectangle[] = isCrosscut
    ? [
        { ...region, length: at - region.x },
        { ...region, x: at + kerf, length: far - at - kerf },
      ]
    : [
        { ...region, width: at - region.y },
        { ...region, y: at + kerf, width: far - at - kerf },
      ];
  const real = sides.filter(({ length, width }) => length > 0 && width > 0);
  const holding = real.filter((side) => pieces.some((piece) => isWithin(piece, side)));
  const sizes = (holding.length > 0 ? holding : real).map((side) => (isCrosscut ? side.length : side.width));
  return [...new Set(sizes)];
}

function greedyCover(cuts: readonly (readonly number[])[]): number {
  let open = cuts.filter((sizes) => sizes.length > 0);
  let taken = 0;
  while (open.length > 0) {
    const served = new Map<number, number>();
    for (const size of open.flat()) served.set(size, (served.get(size) ?? 0) + 1);
    let best = -1;
    for (const [size, count] of served) {
      const most = served.get(best) ?? 0;
      if (count > most || (count === most && size > best)) best = size;
    }
    open = open.filter((sizes) => !sizes.includes(best));
    taken += 1;
  }
  return taken;
}
