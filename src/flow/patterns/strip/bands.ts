import type { Plate } from '../plate.ts';
import {
  type BandGroup,
  type InTheWay,
  type Obstacle,
  type Offering,
  bandGroup,
  openOffering,
} from './band-group.ts';
import { ceilIndex } from './raster.ts';
import type { Raster } from './raster-plate.ts';
import type { StackOption } from './stack.ts';

export type { BandGroup } from './band-group.ts';

/** A strip of one width over the whole length of the plate. Strips that offer the same, at whatever height, share one band. */
export interface Band {
  readonly width: number;
  /** Shortest length first. */
  readonly groups: readonly BandGroup[];
  /** X indices, ascending, from which a length may be offered a better option than just before: a defect ends to matter. */
  readonly wakes: readonly number[];
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
  /** Band of a strip of the same width laid from the y index before; −1 when there is none. */
  readonly under: number;
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

function inTheWay(plate: Plate, y: number, width: number): InTheWay {
  const obstacles: Obstacle[] = [];
  const blocked = new Uint8Array(plate.clearances.length);
  plate.clearances.forEach((rectangles, clearance) => {
    for (const r of rectangles) {
      if (r.y >= y + width || r.y + r.width <= y) continue;
      blocked[clearance] = 1;
      const [low, high] = [Math.max(0, r.y - y), Math.min(width, r.y + r.width - y)];
      obstacles.push({ clearance, x: r.x, end: r.x + r.length, low, high });
    }
  });
  return { obstacles, blocked };
}

/**
 * Where along a band options may turn better. Among true positions only where a defect ends; where positions
 * stand for all up to the next, wherever the option changes at all.
 */
function wakesOf(raster: Raster, groups: readonly BandGroup[], blocking: readonly Obstacle[]): number[] {
  const { xs, relaxed, exactX } = raster;
  const wakes = new Set<number>();
  if (!relaxed || exactX) {
    for (const { end } of blocking) wakes.add(ceilIndex(xs, end));
  } else {
    for (const { start, ids, clear } of groups) {
      ids.forEach((id, k) => {
        if (id !== (k === 0 ? clear : ids[k - 1])) wakes.add(start + k);
      });
      if (ids.length > 0) wakes.add(start + ids.length);
    }
  }
  return [...wakes].filter((p) => p < xs.length - 1).sort((a, b) => a - b);
}

/** Everything about strips that does not depend on what the pieces are worth. */
export function bandsOf(given: Plate, raster: Raster): Bands {
  const plate = raster.relaxed && !raster.exactY ? shrunkDefects(given, raster.ys) : given;
  const offering: Offering = openOffering(plate, raster);
  const bands: Band[] = [];
  const byKey = new Map<string, number>();
  const arcs: BandArc[] = [];
  const make = (width: number, blocking: InTheWay, clearBand: number): number => {
    const groups: BandGroup[] = [];
    for (let index = raster.groups.length - 1; index >= 0; index -= 1) {
      const made = bandGroup(offering, index, width, blocking);
      if (made !== null) groups.push(made);
    }
    const key = `${width}|${groups.map(({ number }) => number).join()}`;
    const known = byKey.get(key);
    if (known !== undefined) return known;
    byKey.set(key, bands.length);
    bands.push({
      width,
      groups,
      wakes: wakesOf(raster, groups, blocking.obstacles),
      clearFrom: groups.reduce((most, g) => Math.max(most, g.start + g.ids.length), 0),
      clearBand: clearBand < 0 ? bands.length : clearBand,
    });
    return bands.length - 1;
  };
  const clear = raster.widths.map((width) => make(width, { obstacles: [], blocked: new Uint8Array(0) }, -1));
  raster.widths.forEach((width, w) => {
    let under = -1;
    raster.ys.forEach((y, from) => {
      const to = raster.nextY[w]![from]!;
      if (to < 0) return;
      const blocking = inTheWay(plate, y, width);
      const band = blocking.obstacles.length === 0 ? clear[w]! : make(width, blocking, clear[w]!);
      arcs.push({ from, to, band, y, under });
      under = band;
    });
  });
  arcs.sort((a, b) => a.to - b.to || a.from - b.from);
  const full = arcs.find((a) => a.from === 0 && bands[a.band]!.width === plate.width);
  const { options } = offering;
  return { bands, arcs, options, fullBand: full === undefined ? -1 : full.band };
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
