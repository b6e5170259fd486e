import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Cut, LaidBoard } from '../cuts/layout.ts';
import type { Shop } from '../shop/shop.ts';
import type { CutFault } from './fault.ts';
import { isSame, isWithin, takesOnlyTrim } from './outline.ts';
import type { Meeting } from './runs.ts';

/** A workpiece on the bench, with how deep the cuts that made it nest. */
interface OnBench extends Rectangle {
  readonly depth: number;
}

/** What a replay leaves on the bench; `bench` is null when a cut could not be made, so that nothing can be said of it. */
export interface Replay {
  readonly bench: readonly Rectangle[] | null;
  /** Square ticks lost to the kerfs of all cuts but the trims. */
  readonly kerf: number;
  readonly faults: readonly CutFault[];
}

/** Where a cut lies along the direction it divides, and how wide the workpiece is the other way. */
interface Axis {
  readonly from: number;
  readonly to: number;
  readonly breadth: number;
}

function axisOf(cut: Cut): Axis {
  const { x, y, length, width } = cut.region;
  return cut.kind === 'crosscut'
    ? { from: x, to: x + length, breadth: width }
    : { from: y, to: y + width, breadth: length };
}

/** Depth after a cut: crosscuts stand at odd depths, rips at even ones, the next of its own kind from where it is. */
function deepen(depth: number, kind: Cut['kind']): number {
  const wantsOdd = kind === 'crosscut';
  for (let next = Math.max(1, depth); ; next += 1) if ((next % 2 === 1) === wantsOdd) return next;
}

const names = ['section', 'strip', 'piece', 'rerip'];

/**
 * Makes the cuts one by one from the whole board and notes everything wrong with them.
 * @param usable what the trims must leave   @param meetings where pieces of a run meet on this board
 */
export function replay(laid: LaidBoard, usable: Rectangle, shop: Shop, meetings: readonly Meeting[]): Replay {
  const on = { board: laid.board, copy: laid.copy };
  const faults: CutFault[] = [];
  const bench: OnBench[] = [{ x: 0, y: 0, length: laid.length, width: laid.width, depth: 0 }];
  let kerf = 0;
  for (const [index, cut] of laid.cuts.entries()) {
    const { step, kind, region } = cut;
    if (step !== index + 1) faults.push({ kind: 'wrong step', on, said: step, right: index + 1 });
    const found = bench.findIndex((workpiece) => isSame(workpiece, region));
    const workpiece = bench[found];
    if (workpiece === undefined) {
      faults.push({ kind: 'no such workpiece', on, step, region });
      return { bench: null, kerf, faults };
    }
    const { from, to, breadth } = axisOf(cut);
    if (!(cut.kerf >= 0) || cut.at >= to || cut.at + cut.kerf <= from) {
      faults.push({ kind: 'misses the workpiece', on, step });
      return { bench: null, kerf, faults };
    }
    const isTrim = takesOnlyTrim(cut, usable);
    const depth = isTrim ? workpiece.depth : deepen(workpiece.depth, kind);
    faults.push(...rulesBroken(laid, cut, { usable, shop, meetings, isTrim, depth }));
    if (!isTrim) kerf += (Math.min(to, cut.at + cut.kerf) - Math.max(from, cut.at)) * breadth;
    bench.splice(found, 1, ...halves(cut, from, to, depth));
  }
  return { bench, kerf, faults };
}

/** The one or two workpieces a cut leaves. */
function halves(cut: Cut, from: number, to: number, depth: number): OnBench[] {
  const spans = [
    [from, cut.at],
    [cut.at + cut.kerf, to],
  ] as const;
  return spans
    .filter(([start, end]) => end > start)
    .map(([start, end]) =>
      cut.kind === 'crosscut'
        ? { ...cut.region, x: start, length: end - start, depth }
        : { ...cut.region, y: start, width: end - start, depth },
    );
}

interface Circumstances {
  readonly usable: Rectangle;
  readonly shop: Shop;
  readonly meetings: readonly Meeting[];
  readonly isTrim: boolean;
  readonly depth: number;
}

function rulesBroken(laid: LaidBoard, cut: Cut, { usable, shop, ...rest }: Circumstances): CutFault[] {
  const on = { board: laid.board, copy: laid.copy };
  const { step, kind, region } = cut;
  const faults: CutFault[] = [];
  const parted = kind === 'crosscut' ? rest.meetings.filter((meeting) => isParted(meeting, cut)) : [];
  const right = parted[0]?.kerf ?? (kind === 'rip' ? shop.ripKerf : shop.crosscutKerf);
  if (cut.kerf !== right) faults.push({ kind: 'wrong kerf', on, step, said: cut.kerf, right });
  if (parted[0] !== undefined && !isClearOfOthers(laid, cut, parted)) {
    faults.push({ kind: 'slanted through a neighbour', on, step });
  }
  if (kind === 'rip' && region.length < shop.shortestRip) {
    faults.push({ kind: 'too short to rip', on, step, length: region.length, least: shop.shortestRip });
  }
  if (!rest.isTrim && !isWithin(region, usable)) faults.push({ kind: 'before the trims', on, step });
  if (!rest.isTrim && shop.stages !== 'any' && rest.depth > shop.stages) {
    faults.push({ kind: 'nests too deep', on, step, stage: rest.depth, stages: shop.stages });
  }
  const trimName = kind === 'crosscut' ? 'end trim' : 'edge trim';
  const purpose = rest.isTrim ? trimName : (names[rest.depth - 1] ?? 'deeper');
  if (cut.purpose !== undefined && cut.purpose !== purpose)
    faults.push({ kind: 'wrong purpose', on, step, right: purpose });
  return faults;
}

/** Whether the cut goes between two pieces of a run that both lie in its workpiece. */
function isParted(meeting: Meeting, cut: Cut): boolean {
  const { near, far } = meeting;
  if (!isWithin(near, cut.region) || !isWithin(far, cut.region)) return false;
  return cut.at >= near.x + near.length && cut.at <= far.x;
}

/**
 * A tilted blade leans over the ends of what lies before and behind it: beside the two pieces that meet nothing else may
 * lie in the workpiece. What lies farther along it, the rest of the run say, however wide, is out of its reach.
 */
function isClearOfOthers(laid: LaidBoard, cut: Cut, parted: readonly Meeting[]): boolean {
  const [first, ...others] = parted;
  if (first === undefined || others.length > 0) return false;
  const { near, far } = first;
  return laid.pieces.every(
    (piece) =>
      isSame(piece, near) ||
      isSame(piece, far) ||
      !isWithin(piece, cut.region) ||
      piece.x + piece.length <= near.x ||
      piece.x >= far.x + far.length,
  );
}
