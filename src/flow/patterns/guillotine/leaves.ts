import { overlaps } from '../../../base/geometry/rectangle.ts';
import type { Kind, RunPieces } from '../plate.ts';
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
  for (const [kind, { shapes, run }] of kinds.entries()) {
    const free = clearances.freeOf[kind]!;
    const put = (column: number, row: number, length: number, width: number): void => {
      const level = side === 'bound' ? 0 : entryLevel(net, column, row, { length, width, run: run ?? null });
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

/** One cut after another on a workpiece, all of a kind counting as one. */
type Cuts = readonly ('crosscut' | 'rip')[];

interface Leaf {
  readonly length: number;
  readonly width: number;
  readonly run: RunPieces | null;
}

/** The lowest level whose cuts free a piece of these sizes from the workpiece, and a run's pieces from one another; −1 when none do. */
function entryLevel(net: BareNet, column: number, row: number, leaf: Leaf): number {
  const { columns, rows, ripFrom, crosscutKerf, ripKerf } = net;
  const isLong = columns.size[column] !== leaf.length + crosscutKerf;
  const isWide = rows.size[row] !== leaf.width + ripKerf;
  const mayRip = (length: number): boolean => length + crosscutKerf >= ripFrom;
  const wholeRips = columns.size[column]! >= ripFrom;
  const ways =
    leaf.run === null
      ? waysToFree(isLong, isWide, wholeRips, mayRip(leaf.length))
      : waysToFreeRun(leaf.run, isWide, wholeRips, mayRip(leaf.run.shortest));
  return ways.reduce((least, cuts) => {
    const level = levelOf(net, cuts);
    return level >= 0 && (least < 0 || level < least) ? level : least;
  }, -1);
}

/** @param wholeRips whether the workpiece may be ripped as it is   @param pieceRips the same once it is as long as the piece */
function waysToFree(isLong: boolean, isWide: boolean, wholeRips: boolean, pieceRips: boolean): Cuts[] {
  if (!isWide) return [isLong ? ['crosscut'] : []];
  if (!isLong) return wholeRips ? [['rip']] : [];
  return [
    ...(wholeRips ? [['rip', 'crosscut'] as const] : []),
    ...(pieceRips ? [['crosscut', 'rip'] as const] : []),
  ];
}

/** A run is crosscut whatever it lies in; of the narrower of its pieces the caller says that they may be ripped. @param piecesRip whether all may be */
function waysToFreeRun(
  { isEven }: RunPieces,
  isWide: boolean,
  wholeRips: boolean,
  piecesRip: boolean,
): Cuts[] {
  const apart: Cuts = isEven ? ['crosscut'] : ['crosscut', 'rip'];
  if (!isWide) return [apart];
  return [
    ...(wholeRips ? [['rip', ...apart] as const] : []),
    ...(piecesRip ? [['crosscut', 'rip'] as const] : []),
  ];
}

/** The lowest level from which these cuts can be made one after another; −1 when there is none. */
function levelOf({ crosscuts, rips }: BareNet, cuts: Cuts): number {
  let level = 0;
  for (const kind of [...cuts].reverse()) {
    const allowed = kind === 'crosscut' ? crosscuts : rips;
    while (level < allowed.length && allowed[level] === noCut) level += 1;
  }
  return level < crosscuts.length ? level : -1;
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
