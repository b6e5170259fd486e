import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { StockGroup } from './instance.ts';

type Sized = Pick<Rectangle, 'length' | 'width'>;

/** Area of a board, or of a piece on it, grown by a kerf each way. Square ticks. */
export function grownArea({ plate }: StockGroup, { length, width }: Sized): number {
  return (length + plate.crosscutKerf) * (width + plate.ripKerf);
}

/** The least grown area that a piece claims on a board: laid across it swaps the two kerfs. Square ticks. */
export function leastClaim(group: StockGroup, { length, width }: Sized): number {
  return Math.min(grownArea(group, { length, width }), grownArea(group, { length: width, width: length }));
}

/** What no kind may touch, whatever it is: rectangles blocked under every clearance that is used. */
export function blockedForAll({ plate, kinds }: StockGroup): Rectangle[] {
  const used = [...new Set(kinds.flatMap((kind) => kind.clearances))];
  const lists = used.map((clearance) => plate.clearances[clearance] ?? []);
  const same = (a: Rectangle, b: Rectangle): boolean =>
    a.x === b.x && a.y === b.y && a.length === b.length && a.width === b.width;
  return (lists[0] ?? []).filter((r) => lists.every((list) => list.some((other) => same(other, r))));
}
