import type { Rectangle } from '../../../src/base/geometry/rectangle.ts';
import type { Plate } from '../../../src/flow/patterns/plate.ts';
import type { PlacedRun } from '../../patterns/strip/workpieces.ts';
import type { TinyJob } from './tiny-job.ts';

/** A run that is to show one face. */
interface FacedRun {
  readonly kind: number;
  /** Indices of its parts, in file order. */
  readonly members: readonly number[];
  readonly face: 'A' | 'B';
}

/** Kerf of a blade tilted for the steeper of two ends: kerf / cos, in cells; the angles of tiny jobs keep it whole. */
function meetingKerf(kerf: number, first: number, second: number): number {
  const steeper = Math.max(Math.abs(first), Math.abs(second));
  const slanted = kerf / Math.cos((steeper * Math.PI) / 180);
  if (Math.abs(slanted - Math.round(slanted)) > 1e-6) throw new Error(`a kerf of ${slanted} cells`);
  return Math.round(slanted);
}

/** Whether one of two heights lies within the other. */
function isNested(a: Rectangle, b: Rectangle): boolean {
  const [narrow, wide] = a.width <= b.width ? [a, b] : [b, a];
  return narrow.y >= wide.y && narrow.y + narrow.width <= wide.y + wide.width;
}

/**
 * Every way to lay a run on the plate: forward or end for end, its members one behind the other with exactly their kerfs
 * between them, of two neighbours the narrower within the height of the wider, all clear of what they must avoid.
 */
export function placedRuns({ job, cell }: TinyJob, plate: Plate, run: FacedRun): PlacedRun[] {
  const { shop, parts } = job;
  const blanks = run.members.map((index) => ({
    clearance: plate.clearances[2 * index + (run.face === 'A' ? 0 : 1)]!,
    length: (parts[index]!.length + shop.lengthAllowance) / cell,
    width: (parts[index]!.width + shop.widthAllowance) / cell,
  }));
  const gaps = run.members
    .slice(1)
    .map((index, m) =>
      meetingKerf(plate.crosscutKerf, parts[run.members[m]!]!.rightEnd, parts[index]!.leftEnd),
    );
  const ways = [
    { order: blanks, kerfs: gaps },
    { order: blanks.toReversed(), kerfs: gaps.toReversed() },
  ];
  return ways.flatMap(({ order, kerfs }) => {
    const total =
      order.reduce((sum, { length }) => sum + length, 0) + kerfs.reduce((sum, kerf) => sum + kerf, 0);
    const starts = Array.from({ length: Math.max(0, plate.length - total + 1) }, (_, x) => x);
    return starts
      .flatMap((x) => laidFrom(plate, order, kerfs, x))
      .map((members) => ({ kind: run.kind, members, kerfs }));
  });
}

interface Blank {
  readonly length: number;
  readonly width: number;
  readonly clearance: readonly Rectangle[];
}

/** All heights of the members of a run that begins at x. */
function laidFrom(plate: Plate, order: readonly Blank[], kerfs: readonly number[], x: number): Rectangle[][] {
  const [first, ...others] = order;
  if (first === undefined) return [[]];
  const { length, width, clearance } = first;
  const rest = laidFrom(plate, others, kerfs.slice(1), x + length + (kerfs[0] ?? 0));
  const found: Rectangle[][] = [];
  for (let y = 0; y + width <= plate.width; y += 1) {
    const here = { x, y, length, width };
    const isClear = clearance.every(
      (r) => r.x >= x + length || r.x + r.length <= x || r.y >= y + width || r.y + r.width <= y,
    );
    if (!isClear) continue;
    for (const tail of rest)
      if (tail[0] === undefined || isNested(here, tail[0])) found.push([here, ...tail]);
  }
  return found;
}
