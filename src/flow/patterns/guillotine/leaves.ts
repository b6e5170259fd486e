import { overlaps } from '../../../base/geometry/rectangle.ts';
import type { Kind, Plate } from '../plate.ts';
import type { Axis } from './axis.ts';
import type { Clearances } from './clearance.ts';
import type { Leaves } from './net.ts';

/**
 * Every piece at every place where it fills a state and misses the blocks of one of its clearances. A bound's
 * place is rounded down, and so is the far end: a piece that would overlap from there overlaps from wherever
 * in the gap it really begins, as the far edges of blocks are kept places.
 */
export function leavesOf(
  plate: Plate,
  kinds: readonly Kind[],
  clearances: Clearances,
  columns: Axis,
  rows: Axis,
): Leaves {
  const found: [state: number, kind: number, clearance: number, length: number, width: number][] = [];
  for (const [kind, { shapes }] of kinds.entries()) {
    const free = clearances.freeOf[kind]!;
    for (const { length, width } of shapes) {
      const rowHomes = rows.homes(width + plate.ripKerf);
      for (const column of columns.homes(length + plate.crosscutKerf)) {
        for (const row of rowHomes) {
          const piece = { x: columns.near[column]!, y: rows.near[row]!, length, width };
          const isClear = (clearance: number): boolean =>
            !clearances.blocks[clearance]!.some((block) => overlaps(block, piece));
          const clearance = free >= 0 ? free : (clearances.ofKind[kind]!.find(isClear) ?? -1);
          if (clearance >= 0) found.push([column * rows.count + row, kind, clearance, length, width]);
        }
      }
    }
  }
  found.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const column = (at: 0 | 1 | 2 | 3 | 4): Int32Array => Int32Array.from(found, (leaf) => leaf[at]);
  return { state: column(0), kind: column(1), clearance: column(2), length: column(3), width: column(4) };
}
