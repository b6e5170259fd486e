/**
 * An axis-parallel rectangle on a board: x runs along the board from its butt end, y across it from its
 * near edge, both as seen on face A. All four in ticks.
 */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** Whether two rectangles share more than an edge (touching is not overlapping). */
export function overlaps(a: Rectangle, b: Rectangle): boolean {
  return a.x < b.x + b.length && b.x < a.x + a.length && a.y < b.y + b.width && b.y < a.y + a.width;
}

/** Whether `inner` lies wholly in `outer`; shared edges allowed. */
export function contains(outer: Rectangle, inner: Rectangle): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.length <= outer.x + outer.length &&
    inner.y + inner.width <= outer.y + outer.width
  );
}

/** Area in square ticks. */
export function area(rectangle: Rectangle): number {
  return rectangle.length * rectangle.width;
}
