import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import type { Plate } from '../plate.ts';

/** A shape of one kind as it enters a strip. */
export interface StripShape {
  readonly kind: number;
  readonly width: number;
  /** Clearances any of which suffices. */
  readonly clearances: readonly number[];
  /** See Kind; null for one piece. */
  readonly shortestOfRun: number | null;
}

/**
 * One arc of a stack: on the strip's segment, with everything below `from` used up, a piece of `kind` lies at
 * `offset` above the strip's near edge and leaves the segment free from `to` on (its kerf included).
 */
export interface StackArc {
  readonly kind: number;
  readonly clearance: number;
  readonly from: number;
  readonly to: number;
  readonly offset: number;
  readonly width: number;
}

/**
 * All the ways to stack pieces of one length on one segment of a strip (the piece ripped once more, stage 4):
 * nodes are offsets numbered upward, node 0 the strip's near edge; arcs sorted by `from` descending, so that
 * one pass backward gives the best stack.
 */
export interface StackOption {
  /** Of every piece in the stack. */
  readonly length: number;
  readonly nodes: number;
  readonly arcs: readonly StackArc[];
}

export interface Segment {
  readonly x: number;
  readonly length: number;
  /** Of the strip. */
  readonly y: number;
  readonly width: number;
}

/** Lowest offset ≥ `from` at which a piece of this width under this clearance is free of blocked rectangles; null when none fits. */
function lowestFree(
  blocked: readonly Rectangle[],
  segment: Segment,
  from: number,
  width: number,
): number | null {
  let offset = from;
  for (let moved = true; moved;) {
    moved = false;
    if (offset + width > segment.width) return null;
    for (const { y, width: high } of blocked) {
      const low = y - segment.y;
      if (low < offset + width && low + high > offset) {
        offset = low + high;
        moved = true;
      }
    }
  }
  return offset;
}

/**
 * Lists the stacks on one segment; null when nothing fits.
 * A piece shorter than the shortest rip, or any piece when only 3 stages are allowed, must fill the strip's
 * width exactly; so must a run some piece of which is too short to be ripped.
 */
export function stackOption(
  plate: Plate,
  shapes: readonly StripShape[],
  segment: Segment,
): StackOption | null {
  const exact = segment.length < plate.shortestRip || plate.stages === 3;
  const inReach = plate.clearances.map((rectangles) =>
    rectangles.filter((r) => r.x < segment.x + segment.length && r.x + r.length > segment.x),
  );
  const numbers = new Map<number, number>([[0, 0]]);
  const arcs: StackArc[] = [];
  const pending = [0];
  for (let at = pending.pop(); at !== undefined; at = pending.pop()) {
    const from = numbers.get(at) ?? 0;
    for (const shape of shapes) {
      if (shape.shortestOfRun !== null && at !== 0) continue;
      const mustFill = exact || (shape.shortestOfRun ?? Infinity) < plate.shortestRip;
      const best = lowestArc(shape, segment, inReach, at, mustFill);
      if (best === null) continue;
      // Behind a run nothing more is laid: the crosscuts between its pieces go through the whole strip.
      const end = shape.shortestOfRun === null ? best.offset + shape.width + plate.ripKerf : Infinity;
      if (!numbers.has(end)) {
        numbers.set(end, numbers.size);
        if (end < Infinity) pending.push(end);
      }
      arcs.push({ kind: shape.kind, width: shape.width, from, to: numbers.get(end) ?? 0, ...best });
    }
  }
  if (arcs.length === 0) return null;
  return ordered(segment.length, numbers, arcs);
}

function lowestArc(
  shape: StripShape,
  segment: Segment,
  inReach: readonly (readonly Rectangle[])[],
  at: number,
  exact: boolean,
): { offset: number; clearance: number } | null {
  if (exact && (at !== 0 || shape.width !== segment.width)) return null;
  let best: { offset: number; clearance: number } | null = null;
  for (const clearance of shape.clearances) {
    const blocked = inReach[clearance] ?? [];
    const offset = lowestFree(blocked, segment, at, shape.width);
    if (offset === null || (exact && offset !== 0)) continue;
    if (best === null || offset < best.offset) best = { offset, clearance };
  }
  return best;
}

/** Renumbers nodes by offset and sorts arcs so that a backward pass sees every `to` before its `from`. */
function ordered(
  length: number,
  numbers: ReadonlyMap<number, number>,
  arcs: readonly StackArc[],
): StackOption {
  const rank = new Map<number, number>();
  [...numbers].sort((a, b) => a[0] - b[0]).forEach(([, old], index) => rank.set(old, index));
  const renumbered = arcs.map((arc) => ({
    ...arc,
    from: rank.get(arc.from) ?? 0,
    to: rank.get(arc.to) ?? 0,
  }));
  renumbered.sort((a, b) => b.from - a.from);
  return { length, nodes: numbers.size, arcs: renumbered };
}

/** What a stack holds: its pieces from the strip's near edge up. */
export interface Stack {
  readonly value: number;
  readonly pieces: readonly StackArc[];
}

/** The most valuable stack under the given worth of each kind. O(arcs). */
export function bestStack(option: StackOption, worth: Float64Array): Stack {
  const value = new Float64Array(option.nodes);
  const choice = new Array<StackArc | undefined>(option.nodes);
  for (const arc of option.arcs) {
    const total = worth[arc.kind]! + value[arc.to]!;
    if (total > value[arc.from]!) {
      value[arc.from] = total;
      choice[arc.from] = arc;
    }
  }
  const pieces: StackArc[] = [];
  for (let arc = choice[0]; arc !== undefined; arc = choice[arc.to]) pieces.push(arc);
  return { value: value[0]!, pieces };
}

/** A key under which options coincide that offer the same stacks, wherever their pieces lie. */
export function optionKey(option: StackOption): string {
  return `${option.length}:` + option.arcs.map((a) => `${a.kind},${a.from},${a.to}`).join(';');
}
