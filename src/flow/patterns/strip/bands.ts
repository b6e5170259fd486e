import type { Plate } from '../plate.ts';
import { type Offering, bandGroup, openNumberings, openOffering } from './band-group.ts';
import { type BandGroups, eachSpan, groupTable } from './group-table.ts';
import { type Numbering, numberPut, put } from './numbering.ts';
import type { InTheWay, Obstacle } from './obstacles.ts';
import { ceilIndex } from './raster.ts';
import type { Raster } from './raster-plate.ts';
import type { StackOption } from './stack.ts';

/**
 * Strips of one width over the whole length of the plate, as flat lists by number. Strips that offer the same, at whatever
 * height, share one band.
 */
export interface BandLists {
  readonly width: Float64Array;
  /** What band b offers each length, the shortest first: entries from[b] up to from[b + 1] of the bands' list of groups. */
  readonly from: Int32Array;
  /**
   * X indices, ascending, from which a length may be offered a better option than just before, where a defect ends to matter: of
   * band b the entries wakesFrom[b] up to wakesFrom[b + 1].
   */
  readonly wakes: Int16Array;
  readonly wakesFrom: Int32Array;
  /** From this x index on the band is as good as a clear one. */
  readonly clearFrom: Int16Array;
  /** The band of the same width with nothing in the way. */
  readonly clearBand: Int32Array;
}

/**
 * Strips laid: from which y index and to which what lies above starts, as flat lists. Sorted by `to`, so that a DP over heights
 * can run in order.
 */
export interface BandArcs {
  readonly from: Int16Array;
  readonly to: Int16Array;
  readonly band: Int32Array;
  /** Band of a strip of the same width laid from the y index before; −1 when there is none. */
  readonly under: Int32Array;
}

export interface Bands {
  /** How many bands there are. */
  readonly count: number;
  readonly lists: BandLists;
  /** Numbers of the groups of all bands, band after band. */
  readonly offered: Uint16Array;
  readonly groups: BandGroups;
  readonly arcs: BandArcs;
  /** Every stack offered anywhere, those that differ only in where pieces lie as one; number 0 stands for none. */
  readonly options: readonly StackOption[];
  /** The band over the plate's whole width, which needs no rip; −1 when no piece is that wide. */
  readonly fullBand: number;
}

function inTheWay(plate: Plate, y: number, width: number): InTheWay {
  const obstacles: Obstacle[] = [];
  const blocked = new Uint8Array(plate.clearances.length);
  let number = -1;
  plate.clearances.forEach((rectangles, clearance) => {
    for (const r of rectangles) {
      number += 1;
      if (r.y >= y + width || r.y + r.width <= y) continue;
      blocked[clearance] = 1;
      const [low, high] = [Math.max(0, r.y - y), Math.min(width, r.y + r.width - y)];
      obstacles.push({ clearance, number, x: r.x, end: r.x + r.length, low, high });
    }
  });
  return { obstacles, blocked };
}

/**
 * Where along a band options may turn better. Among true positions only where a defect ends; where positions
 * stand for all up to the next, wherever the option changes at all.
 */
function wakesOf(
  raster: Raster,
  groups: Numbering,
  offered: Float64Array,
  blocking: readonly Obstacle[],
): number[] {
  const { xs, relaxed, exactX } = raster;
  const wakes = new Set<number>();
  if (!relaxed || exactX) {
    for (const { end } of blocking) wakes.add(ceilIndex(xs, end));
  } else {
    for (const group of offered) eachSpan(groups, group, (first, stop) => wakes.add(first).add(stop));
  }
  return [...wakes].filter((p) => p < xs.length - 1).sort((a, b) => a - b);
}

/** Behind the last place where something is in the way of a group. */
function endOf({ lists, from }: Numbering, group: number): number {
  return from[group + 1]! - from[group]! === 2 ? 0 : lists[from[group + 1]! - 2]!;
}

/** Bands in the making. */
interface Making {
  readonly offering: Offering;
  readonly lists: { readonly [list in keyof BandLists]: number[] };
}

/** The number of the band of this width with this in the way. @param clearBand −1: it is the clear one itself */
function bandFor({ offering, lists }: Making, w: number, blocking: InTheWay, clearBand: number): number {
  const { raster, groups, bands: known } = offering;
  put(known, w);
  for (let index = raster.groups.length - 1; index >= 0; index -= 1) {
    const group = bandGroup(offering, index, w, blocking);
    if (group >= 0) put(known, group);
  }
  const number = numberPut(known);
  if (number < lists.width.length) return number;
  const offered = known.lists.subarray(known.from[number]! + 1, known.from[number + 1]);
  lists.width.push(raster.widths[w]!);
  lists.from.push(lists.from[number]! + offered.length);
  lists.wakes.push(...wakesOf(raster, groups, offered, blocking.obstacles));
  lists.wakesFrom.push(lists.wakes.length);
  lists.clearFrom.push(offered.reduce((most, group) => Math.max(most, endOf(groups, group)), 0));
  lists.clearBand.push(clearBand < 0 ? number : clearBand);
  return number;
}

/** Most groups that bands can tell apart. */
const mostGroups = 65_536;

/** What all bands offer, band after band. */
function offeredBy({ offering: { groups, bands: known }, lists: { from } }: Making): Uint16Array {
  if (groups.count > mostGroups) throw new RangeError(`${groups.count} groups are more than ${mostGroups}`);
  const offered = new Uint16Array(from.at(-1)!);
  for (let b = 0; b < known.count; b += 1) {
    offered.set(known.lists.subarray(known.from[b]! + 1, known.from[b + 1]), from[b]);
  }
  return offered;
}

/** The arcs in their order. */
function inOrder(arcs: { from: number; to: number; band: number; under: number }[]): BandArcs {
  arcs.sort((a, b) => a.to - b.to || a.from - b.from);
  return {
    from: Int16Array.from(arcs, ({ from }) => from),
    to: Int16Array.from(arcs, ({ to }) => to),
    band: Int32Array.from(arcs, ({ band }) => band),
    under: Int32Array.from(arcs, ({ under }) => under),
  };
}

/**
 * Everything about strips that does not depend on what the pieces are worth.
 * @param numberings memory for it, good for the next plate afterwards
 */
export function bandsOf(given: Plate, raster: Raster, numberings = openNumberings()): Bands {
  const plate = raster.relaxed && !raster.exactY ? shrunkDefects(given, raster.ys) : given;
  const offering = openOffering(plate, raster, numberings);
  const lists: Making['lists'] = {
    width: [],
    from: [0],
    wakes: [],
    wakesFrom: [0],
    clearFrom: [],
    clearBand: [],
  };
  const making: Making = { offering, lists };
  const arcs: { from: number; to: number; band: number; under: number }[] = [];
  const nothing: InTheWay = { obstacles: [], blocked: new Uint8Array(plate.clearances.length) };
  const clear = raster.widths.map((_, w) => bandFor(making, w, nothing, -1));
  let fullBand = -1;
  raster.widths.forEach((width, w) => {
    let under = -1;
    raster.ys.forEach((y, from) => {
      const to = raster.nextY[w]![from]!;
      if (to < 0) return;
      const blocking = inTheWay(plate, y, width);
      const band = blocking.obstacles.length === 0 ? clear[w]! : bandFor(making, w, blocking, clear[w]!);
      arcs.push({ from, to, band, under });
      under = band;
      if (from === 0 && width === plate.width) fullBand = band;
    });
  });
  return {
    count: lists.width.length,
    lists: {
      width: Float64Array.from(lists.width),
      from: Int32Array.from(lists.from),
      wakes: Int16Array.from(lists.wakes),
      wakesFrom: Int32Array.from(lists.wakesFrom),
      clearFrom: Int16Array.from(lists.clearFrom),
      clearBand: Int32Array.from(lists.clearBand),
    },
    offered: offeredBy(making),
    groups: groupTable(offering.groups, offering.options.length, raster.xs.length),
    arcs: inOrder(arcs),
    options: offering.options,
    fullBand,
  };
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
