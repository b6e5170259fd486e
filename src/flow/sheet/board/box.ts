/** A rectangle on the paper, whole drawing units (0.1 mm when printed at full size), y downward. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Whether two boxes share more than an edge. */
export function collide(a: Box, b: Box): boolean {
  return a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
}

/** The box with `by` added on every side (taken off when negative; never less than nothing). */
export function grown(box: Box, by: number): Box {
  return { x: box.x - by, y: box.y - by, w: Math.max(0, box.w + 2 * by), h: Math.max(0, box.h + 2 * by) };
}

/**
 * The largest boxes inside `box` that touch no obstacle (they overlap one another). Each obstacle splits every
 * box it hits into what lies left, right, above and below it. Fine for the few obstacles one piece has.
 * @param least boxes narrower or lower than this are dropped
 */
export function freeBoxes(box: Box, obstacles: readonly Box[], least: { w: number; h: number }): Box[] {
  let free: Box[] = [box];
  for (const obstacle of obstacles) {
    const next: Box[] = [];
    for (const candidate of free) {
      if (!collide(candidate, obstacle)) next.push(candidate);
      else next.push(...around(candidate, obstacle).filter((part) => part.w >= least.w && part.h >= least.h));
    }
    free = withoutContained(next);
  }
  return free.filter((part) => part.w >= least.w && part.h >= least.h);
}

function around(box: Box, hole: Box): Box[] {
  const right = hole.x + hole.w;
  const bottom = hole.y + hole.h;
  return [
    { ...box, w: hole.x - box.x },
    { ...box, x: right, w: box.x + box.w - right },
    { ...box, h: hole.y - box.y },
    { ...box, y: bottom, h: box.y + box.h - bottom },
  ];
}

/** A row of many small obstacles multiplies boxes: keep only those that lie in no other, and at most 200. */
function withoutContained(boxes: readonly Box[]): Box[] {
  const largestFirst = [...boxes].sort((a, b) => b.w * b.h - a.w * a.h);
  const kept: Box[] = [];
  for (const box of largestFirst) {
    if (kept.length === 200) break;
    if (!kept.some((other) => holds(other, box))) kept.push(box);
  }
  return kept;
}

function holds(outer: Box, inner: Box): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.w <= outer.x + outer.w &&
    inner.y + inner.h <= outer.y + outer.h
  );
}
