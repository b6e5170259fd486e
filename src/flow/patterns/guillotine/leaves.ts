import { overlaps } from '../../../base/geometry/rectangle.ts';
import type { Kind } from '../plate.ts';
import type { Clearances } from './clearance.ts';
import type { Leaves, Net } from './net.ts';
import { noCut, statesPerLevel } from './net.ts';

type BareNet = Omit<Net, 'leaves'>;

/**
 * Every piece at every place where a state holds it and it misses the blocks of one of its clearances. A bound's places
 * are rounded down: a piece that would overlap from there overlaps from wherever in the gap it really begins, as the
 * far edges of blocks are kept places.
 */
export function leavesOf(
  net: BareNet,
  kinds: readonly Kind[],
  clearances: Clearances,
  side: 'pattern' | 'bound',
): Leaves {
  const { columns, rows, crosscutKerf, ripKerf, ripFrom } = net;
  const found: [state: number, kind: number, clearance: number, length: number, width: number][] = [];
  for (const [kind, { shapes }] of kinds.entries()) {
    const free = clearances.freeOf[kind]!;
    const put = (column: number, row: number, length: number, width: number): void => {
      const level =
        side === 'bound' ? 0 : entryLevel(net, column, row, length + crosscutKerf, width + ripKerf);
      if (level < 0) return;
      const piece = { x: columns.near[column]!, y: rows.near[row]!, length, width };
      const isClear = (clearance: number): boolean =>
        !clearances.blocks[clearance]!.some((block) => overlaps(block, piece));
      const clearance = free >= 0 ? free : (clearances.ofKind[kind]!.find(isClear) ?? -1);
      const state = level * statesPerLevel(net) + column * rows.count + row;
      if (clearance >= 0) found.push([state, kind, clearance, length, width]);
    };
    for (const { length, width } of shapes) {
      const rowHomes = rows.homes(width + ripKerf);
      const taken = length + crosscutKerf;
      for (const column of columns.homes(taken)) for (const row of rowHomes) put(column, row, length, width);
      if (taken >= ripFrom || side === 'bound') continue;
      // Too short to be ripped by itself: it may be freed from a longer workpiece.
      const wide = rowHomes.filter((row) => rows.size[row] !== width + ripKerf);
      for (const column of columns.homes(ripFrom)) for (const row of wide) put(column, row, length, width);
    }
  }
  found.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const column = (at: 0 | 1 | 2 | 3 | 4): Int32Array => Int32Array.from(found, (leaf) => leaf[at]);
  return { state: column(0), kind: column(1), clearance: column(2), length: column(3), width: column(4) };
}

/** The lowest level whose cuts free a piece of these sizes, kerfs included, from the workpiece; −1 when none do. */
function entryLevel(net: BareNet, column: number, row: number, length: number, width: number): number {
  const { columns, rows, ripFrom, crosscuts, rips } = net;
  const isLong = columns.size[column] !== length;
  const isWide = rows.size[row] !== width;
  if (!isLong && !isWide) return 0;
  const crosscut = crosscuts.findIndex((cut) => cut !== noCut);
  const rip = rips.findIndex((cut) => cut !== noCut);
  if (!isWide) return crosscut;
  const wholeRips = columns.size[column]! >= ripFrom;
  if (!isLong) return wholeRips ? rip : -1;
  if (crosscut < 0 || rip < 0) return -1;
  // Ripped whole, then crosscut, or crosscut first and the piece ripped: the earlier cut is of the higher level.
  const ways = [
    wholeRips ? rips.findIndex((cut, level) => cut !== noCut && level >= crosscut) : -1,
    length >= ripFrom ? crosscuts.findIndex((cut, level) => cut !== noCut && level >= rip) : -1,
  ].filter((level) => level >= 0);
  return ways.length > 0 ? Math.min(...ways) : -1;
}

/** Index of the first leaf of a state, or of the place where it would be. */
export function firstLeaf(leaves: Leaves, state: number): number {
  let low = 0;
  let high = leaves.state.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (leaves.state[middle]! < state) low = middle + 1;
    else high = middle;
  }
  return low;
}
