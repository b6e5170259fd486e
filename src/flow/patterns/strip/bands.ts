import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import type { Plate } from '../plate.ts';
import { ceilIndex } from './raster.ts';
import type { LengthGroup, Raster } from './raster-plate.ts';
import { type StackOption, optionKey, stackOption } from './stack.ts';

/** What a strip offers pieces of one length: `clear` everywhere but from x index `start` on, where `ids` says. */
export interface BandGroup {
  readonly group: number;
  /** Option number where nothing is in the way; 0: none. */
  readonly clear: number;
  readonly start: number;
  readonly ids: Int32Array;
}

/** A strip of one width at one height, over the whole length of the plate. Strips that offer the same share one band. */
export interface Band {
  readonly y: number;
  readonly width: number;
  readonly groups: readonly BandGroup[];
  /** 1 at each x index where some length is offered another option than just before: a defect begins or ends to matter. */
  readonly wakes: Uint8Array;
  /** From this x on the band is as good as a clear one. */
  readonly clearFrom: number;
  /** The band of the same width with nothing in the way. */
  readonly clearBand: number;
}

/** A strip laid from y index `from`; what lies above starts at y index `to`. */
export interface BandArc {
  readonly from: number;
  readonly to: number;
  readonly band: number;
  readonly y: number;
}

export interface Bands {
  readonly bands: readonly Band[];
  /** Arcs sorted by `to`, so that a DP over heights can run in order. */
  readonly arcs: readonly BandArc[];
  /** Every stack offered anywhere; number 0 stands for none. */
  readonly options: readonly StackOption[];
  /** The band over the plate's whole width, which needs no rip; −1 when no piece is that wide. */
  readonly fullBand: number;
}

const nothing: StackOption = { length: 0, nodes: 1, arcs: [] };

interface Building {
  readonly plate: Plate;
  readonly raster: Raster;
  readonly options: StackOption[];
  readonly numbers: Map<string, number>;
}

function numberOf(building: Building, option: StackOption | null): number {
  if (option === null) return 0;
  const key = optionKey(option);
  const known = building.numbers.get(key);
  if (known !== undefined) return known;
  building.options.push(option);
  building.numbers.set(key, building.options.length - 1);
  return building.options.length - 1;
}

/** Rectangles blocked for some clearance that reach into the strip, with their clearance. */
function inStrip(plate: Plate, y: number, width: number): { clearance: number; r: Rectangle }[] {
  return plate.clearances.flatMap((rectangles, clearance) =>
    rectangles.filter((r) => r.y < y + width && r.y + r.width > y).map((r) => ({ clearance, r })),
  );
}

/**
 * The options of one length along a strip. Which rectangles lie under the piece decides the option, so it is
 * worked out once for each such set. On a relaxed raster a position stands for all x up to the next one:
 * where the set changes in between, the strip counts as clear there.
 */
function bandGroup(
  building: Building,
  group: LengthGroup,
  index: number,
  strip: { y: number; width: number },
  blocking: readonly { r: Rectangle }[],
): BandGroup | null {
  const { plate, raster } = building;
  const shapes = group.shapes.filter((s) => s.width <= strip.width);
  if (shapes.length === 0) return null;
  const segment = { x: 0, length: group.length, ...strip };
  const free = { ...plate, clearances: plate.clearances.map(() => []) };
  const clear = numberOf(building, stackOption(free, shapes, segment));
  if (clear === 0) return null;
  const first = Math.min(...blocking.map((b) => b.r.x));
  const last = Math.max(...blocking.map((b) => b.r.x + b.r.length));
  const start = ceilIndex(raster.xs, first - group.length + 1);
  const stop = ceilIndex(raster.xs, last);
  if (blocking.length === 0 || stop <= start)
    return { group: index, clear, start: 0, ids: new Int32Array(0) };
  const known = new Map<string, number>();
  const under = (x: number): string =>
    blocking.map((b) => (b.r.x < x + group.length && b.r.x + b.r.length > x ? '1' : '0')).join('');
  const ids = Int32Array.from({ length: stop - start }, (_, k) => {
    const x = raster.xs[start + k]!;
    const key = under(x);
    if (raster.relaxed && !raster.exactX && under((raster.xs[start + k + 1] ?? x + 1) - 1) !== key)
      return clear;
    const id = known.get(key) ?? numberOf(building, stackOption(plate, shapes, { ...segment, x }));
    known.set(key, id);
    return id;
  });
  return { group: index, clear, start, ids };
}

function wakesOf(groups: readonly BandGroup[], positions: number): Uint8Array {
  const wakes = new Uint8Array(positions);
  for (const { clear, start, ids } of groups) {
    ids.forEach((id, k) => {
      if (id !== (k === 0 ? clear : ids[k - 1])) wakes[start + k] = 1;
    });
    const behind = start + ids.length;
    if (ids.length > 0 && behind < positions && ids[ids.length - 1] !== clear) wakes[behind] = 1;
  }
  return wakes;
}

/** Everything about strips that does not depend on what the pieces are worth. */
export function bandsOf(given: Plate, raster: Raster): Bands {
  const plate = raster.relaxed && !raster.exactY ? shrunkDefects(given, raster.ys) : given;
  const building: Building = { plate, raster, options: [nothing], numbers: new Map() };
  const bands: Band[] = [];
  const byKey = new Map<string, number>();
  const arcs: BandArc[] = [];
  const make = (
    y: number,
    width: number,
    blocking: ReturnType<typeof inStrip>,
    clearBand: number,
  ): number => {
    const groups = raster.groups.flatMap((group, index) => {
      const made = bandGroup(building, group, index, { y, width }, blocking);
      return made === null ? [] : [made];
    });
    const clearFrom = Math.max(0, ...blocking.map((b) => b.r.x + b.r.length));
    bands.push({
      y,
      width,
      groups,
      wakes: wakesOf(groups, raster.xs.length),
      clearFrom,
      clearBand: clearBand < 0 ? bands.length : clearBand,
    });
    return bands.length - 1;
  };
  const clear = raster.widths.map((width) => make(0, width, [], -1));
  raster.widths.forEach((width, w) => {
    raster.ys.forEach((y, from) => {
      const to = raster.nextY[w]![from]!;
      if (to < 0) return;
      const blocking = inStrip(plate, y, width);
      const key = `${w}|${blocking.map(({ clearance, r }) => `${clearance},${r.x},${r.length},${Math.max(0, r.y - y)},${Math.min(width, r.y + r.width - y)}`).join('|')}`;
      const band =
        blocking.length === 0 ? clear[w]! : (byKey.get(key) ?? make(y, width, blocking, clear[w]!));
      byKey.set(key, band);
      arcs.push({ from, to, band, y });
    });
  });
  arcs.sort((a, b) => a.to - b.to || a.from - b.from);
  const full = arcs.find((a) => a.from === 0 && bands[a.band]!.width === plate.width);
  return { bands, arcs, options: building.options, fullBand: full === undefined ? -1 : full.band };
}

/**
 * On a relaxed raster of heights a position stands for all heights up to the next one. A rectangle shrunk by
 * the widest gap blocks only what the true one blocks at every height of the gap.
 */
function shrunkDefects(plate: Plate, ys: Float64Array): Plate {
  let gap = 0;
  for (let j = 1; j < ys.length; j += 1) gap = Math.max(gap, ys[j]! - ys[j - 1]!);
  const clearances = plate.clearances.map((rectangles) =>
    rectangles.filter((r) => r.width > gap).map((r) => ({ ...r, width: r.width - gap })),
  );
  return { ...plate, clearances };
}
