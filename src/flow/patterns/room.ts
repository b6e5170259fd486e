import { type Rectangle, overlaps } from '../../base/geometry/rectangle.ts';
import type { Kind, Plate, Shape } from './plate.ts';

/** Far edges of rectangles along one axis, and the plate's own near edge: whatever lies free can be pushed back to one of them. */
function edgesToLieAgainst(far: readonly number[], most: number): number[] {
  return [...new Set([0, ...far.filter((edge) => edge > 0 && edge <= most)])];
}

/** Whether a shape can lie anywhere on the plate without overlapping one of the rectangles. O(rectangles³). */
export function hasRoom(
  plate: Pick<Plate, 'length' | 'width'>,
  rectangles: readonly Rectangle[],
  { length, width }: Shape,
): boolean {
  if (length > plate.length || width > plate.width) return false;
  const far = { x: rectangles.map((r) => r.x + r.length), y: rectangles.map((r) => r.y + r.width) };
  const ys = edgesToLieAgainst(far.y, plate.width - width);
  return edgesToLieAgainst(far.x, plate.length - length).some((x) => {
    const inReach = rectangles.filter((r) => r.x < x + length && r.x + r.length > x);
    return ys.some((y) => !inReach.some((r) => overlaps(r, { x, y, length, width })));
  });
}

/**
 * The kinds without those clearances whose rectangles leave no room for them. What is dear because few boards can hold it would
 * else make a promise of every board that no board keeps.
 */
export function withRoom(plate: Plate, kinds: readonly Kind[]): Kind[] {
  // Hundreds of boards hold hundreds of kinds each: those under the same clearances share the list.
  const lists = new Map<string, readonly number[]>();
  const shared = (list: readonly number[]): readonly number[] => {
    const key = list.join();
    const known = lists.get(key);
    if (known === undefined) lists.set(key, list);
    return known ?? list;
  };
  return kinds.map((kind) => {
    const clearances = kind.clearances.filter((clearance) => {
      const rectangles = plate.clearances[clearance]!;
      return rectangles.length === 0 || kind.shapes.some((shape) => hasRoom(plate, rectangles, shape));
    });
    return { ...kind, clearances: shared(clearances) };
  });
}
