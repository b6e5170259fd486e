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

/** A strip of one width over the whole length of the plate. Strips that offer the same, at whatever height, share one band. */
export interface Band {
  readonly width: number;
  readonly groups: readonly BandGroup[];
  /** 1 at each x index where some length is offered another option than just before: a defect begins or ends to matter. */
  readonly wakes: Uint8Array;
  /** From this x index on the band is as good as a clear one. */
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
  /** Every stack offered anywhere, those that differ only in where pieces lie as one; number 0 stands for none. */
  readonly options: readonly StackOption[];
  /** The band over the plate's whole width, which needs no rip; −1 when no piece is that wide. */
  readonly fullBand: number;
}

const nothing: StackOption = { length: 0, nodes: 1, arcs: [] };

interface Building {
  readonly plate: Plate;
  readonly raster: Raster;
  readonly options: StackOption[];
  /** Options by what they offer, and by what is in the way of them. */
  readonly numbers: Map<string, number>;
  readonly asked: Map<string, number>;
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

/** A rectangle blocked for some clearance, where it reaches into a strip: `low` and `high` are measured from the strip's near edge. */
interface Obstacle {
  readonly clearance: number;
  readonly x: number;
  readonly end: number;
  readonly low: number;
  readonly high: number;
}

function obstacles(plate: Plate, y: number, width: number): Obstacle[] {
  return plate.clearances.flatMap((rectangles, clearance) =>
    rectangles
      .filter((r) => r.y < y + width && r.y + r.width > y)
      .map((r) => ({
        clearance,
        x: r.x,
        end: r.x + r.length,
        low: Math.max(0, r.y - y),
        high: Math.min(width, r.y + r.width - y),
      })),
  );
}

/** The option of one length on a strip of one width with these obstacles under it, worked out once. */
function optionUnder(
  building: Building,
  group: LengthGroup,
  index: number,
  width: number,
  under: readonly Obstacle[],
): number {
  const key = `${index}|${width}|${under.map((o) => `${o.clearance},${o.low},${o.high}`).join(';')}`;
  const known = building.asked.get(key);
  if (known !== undefined) return known;
  const clearances = building.plate.clearances.map((_, clearance) =>
    under
      .filter((o) => o.clearance === clearance)
      .map((o) => ({ x: 0, length: group.length, y: o.low, width: o.high - o.low })),
  );
  const shapes = group.shapes.filter((s) => s.width <= width);
  const segment = { x: 0, length: group.length, y: 0, width };
  const id =
    shapes.length === 0
      ? 0
      : numberOf(building, stackOption({ ...building.plate, clearances }, shapes, segment));
  building.asked.set(key, id);
  return id;
}

/**
 * The options of one length along a strip. Which obstacles lie under the piece decides the option, and that changes only
 * where one begins or ends to be under it. On a relaxed raster a position stands for all x up to the next one: where
 * the obstacles change in between, the strip counts as clear there.
 */
function bandGroup(
  building: Building,
  group: LengthGroup,
  index: number,
  width: number,
  blocking: readonly Obstacle[],
): BandGroup | null {
  const { xs, relaxed, exactX } = building.raster;
  const clear = optionUnder(building, group, index, width, []);
  if (clear === 0) return null;
  const changes = new Set(blocking.flatMap((o) => [o.x - group.length + 1, o.end]));
  const at = [...changes].sort((a, b) => a - b);
  const first = ceilIndex(xs, at[0] ?? 0);
  const ids: number[] = [];
  at.slice(0, -1).forEach((from, k) => {
    const next = at[k + 1]!;
    const under = blocking.filter((o) => o.x < from + group.length && o.end > from);
    const id = under.length === 0 ? clear : optionUnder(building, group, index, width, under);
    const stop = ceilIndex(xs, next);
    for (let p = ceilIndex(xs, from); p < stop; p += 1) {
      const isWhole = !relaxed || exactX || (xs[p + 1] ?? xs[p]! + 1) - 1 < next;
      ids.push(isWhole ? id : clear);
    }
  });
  let start = first;
  while (ids.length > 0 && ids[0] === clear) {
    ids.shift();
    start += 1;
  }
  while (ids.length > 0 && ids[ids.length - 1] === clear) ids.pop();
  return { group: index, clear, start: ids.length === 0 ? 0 : start, ids: Int32Array.from(ids) };
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
  const building: Building = {
    plate,
    raster,
    options: [nothing],
    numbers: new Map(),
    asked: new Map(),
  };
  const bands: Band[] = [];
  const byKey = new Map<string, number>();
  const arcs: BandArc[] = [];
  const make = (width: number, blocking: readonly Obstacle[], clearBand: number): number => {
    const groups = raster.groups.flatMap((group, index) => {
      const made = bandGroup(building, group, index, width, blocking);
      return made === null ? [] : [made];
    });
    const key = `${width}|${groups.map((g) => `${g.group}:${g.start}:${g.ids.join()}`).join('|')}`;
    const known = byKey.get(key);
    if (known !== undefined) return known;
    byKey.set(key, bands.length);
    bands.push({
      width,
      groups,
      wakes: wakesOf(groups, raster.xs.length),
      clearFrom: groups.reduce((most, g) => Math.max(most, g.start + g.ids.length), 0),
      clearBand: clearBand < 0 ? bands.length : clearBand,
    });
    return bands.length - 1;
  };
  const clear = raster.widths.map((width) => make(width, [], -1));
  raster.widths.forEach((width, w) => {
    raster.ys.forEach((y, from) => {
      const to = raster.nextY[w]![from]!;
      if (to < 0) return;
      const blocking = obstacles(plate, y, width);
      arcs.push({ from, to, band: blocking.length === 0 ? clear[w]! : make(width, blocking, clear[w]!), y });
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
