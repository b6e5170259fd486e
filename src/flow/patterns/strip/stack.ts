import type { Plate } from '../plate.ts';

/** A shape of one kind as it enters a strip. */
export interface StripShape {
  readonly kind: number;
  readonly width: number;
  /** Clearances any of which suffices. */
  readonly clearances: readonly number[];
  /** See RunPieces; null for one piece. */
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

/** A rectangle blocked under one clearance, as far as it reaches over the segment: from `low` to `high` above the strip's near edge. */
export interface Blocked {
  readonly clearance: number;
  readonly low: number;
  readonly high: number;
}

/** Lowest offset ≥ `from` at which a piece of this width is free of what is blocked under one clearance. */
export function lowestFree(
  blocked: readonly Blocked[],
  clearance: number,
  from: number,
  width: number,
): number {
  let offset = from;
  for (let moved = true; moved;) {
    moved = false;
    for (const b of blocked) {
      if (b.clearance !== clearance || b.low >= offset + width || b.high <= offset) continue;
      offset = b.high;
      moved = true;
    }
  }
  return offset;
}

/** What a stack may be made of on one segment of a strip. */
export interface StackPlace {
  readonly length: number;
  /** Of the strip. */
  readonly width: number;
  readonly blocked: readonly Blocked[];
}

/** As stackOn, on a segment of the plate. */
export function stackOption(
  plate: Plate,
  shapes: readonly StripShape[],
  { x, length, y, width }: Segment,
): StackOption | null {
  const blocked = plate.clearances.flatMap((rectangles, clearance) =>
    rectangles
      .filter((r) => r.x < x + length && r.x + r.length > x)
      .map((r) => ({ clearance, low: r.y - y, high: r.y + r.width - y })),
  );
  return stackOn(plate, shapes, { length, width, blocked });
}

/**
 * Lists the stacks on one segment; null when nothing fits.
 * A piece shorter than the shortest rip, or any piece when only 3 stages are allowed, must fill the strip's
 * width exactly; so must a run some piece of which is too short to be ripped.
 */
export function stackOn(
  { shortestRip, ripKerf, stages }: Plate,
  shapes: readonly StripShape[],
  place: StackPlace,
): StackOption | null {
  const exact = place.length < shortestRip || stages === 3;
  // Ends of pieces by offset, numbered as they turn up; node 0 is the strip's near edge.
  const ends = [0];
  const arcs: StackArc[] = [];
  const pending = [0];
  for (let from = pending.pop(); from !== undefined; from = pending.pop()) {
    const at = ends[from]!;
    for (const shape of shapes) {
      if (shape.shortestOfRun !== null && at !== 0) continue;
      const mustFill = exact || (shape.shortestOfRun ?? Infinity) < shortestRip;
      if (mustFill && (at !== 0 || shape.width !== place.width)) continue;
      let offset = Infinity;
      let clearance = -1;
      for (const each of shape.clearances) {
        const free = lowestFree(place.blocked, each, at, shape.width);
        if (free >= offset || free + shape.width > place.width || (mustFill && free !== 0)) continue;
        offset = free;
        clearance = each;
      }
      if (clearance < 0) continue;
      // Behind a run nothing more is laid: the crosscuts between its pieces go through the whole strip.
      const end = shape.shortestOfRun === null ? offset + shape.width + ripKerf : Infinity;
      let to = ends.indexOf(end);
      if (to < 0) {
        to = ends.push(end) - 1;
        if (end < Infinity) pending.push(to);
      }
      arcs.push({ kind: shape.kind, width: shape.width, from, to, offset, clearance });
    }
  }
  return arcs.length === 0 ? null : ordered(place.length, ends, arcs);
}

/** Renumbers nodes by offset and sorts arcs so that a backward pass sees every `to` before its `from`. */
function ordered(length: number, ends: readonly number[], arcs: readonly StackArc[]): StackOption {
  // Ends differ, and are few.
  const rank = ends.map((end) => ends.reduce((below, other) => (other < end ? below + 1 : below), 0));
  const renumbered = arcs.map(({ kind, clearance, from, to, offset, width }) => ({
    kind,
    clearance,
    from: rank[from]!,
    to: rank[to]!,
    offset,
    width,
  }));
  renumbered.sort((a, b) => b.from - a.from);
  return { length, nodes: ends.length, arcs: renumbered };
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
