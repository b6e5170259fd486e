import { type Rectangle, overlaps } from '../../../base/geometry/rectangle.ts';
import type { Kind, RunPieces, Shape } from '../plate.ts';
import type { Clearances } from './clearance.ts';
import type { Leaves, Net } from './net.ts';
import { noCut, statesPerLevel } from './net.ts';

type BareNet = Omit<Net, 'leaves'>;

type Found = readonly [
  state: number,
  kind: number,
  clearance: number,
  length: number,
  width: number,
  offset: number,
];

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
  const found: Found[] = [];
  for (const [kind, { shapes, run }] of kinds.entries()) {
    const isOpen = openPlaces(clearances, kind);
    const put = (column: number, row: number, { length, width }: Shape, mayRise = false): void => {
      const level = side === 'bound' ? 0 : entryLevel(net, column, row, { length, width, run: run ?? null });
      if (level < 0) return;
      const [x, y] = [columns.near[column]!, rows.near[row]!];
      const highest = mayRise ? rows.size[row]! - ripKerf - width : 0;
      const state = level * statesPerLevel(net) + column * rows.count + row;
      for (const offset of [0, ...(mayRise ? isOpen.tops.map((top) => top - y) : [])]) {
        if (offset < 0 || offset > highest) continue;
        const clearance = isOpen.under({ x, y: y + offset, length, width });
        if (clearance < 0) continue;
        found.push([state, kind, clearance, length, width, offset]);
        return;
      }
    };
    for (const shape of shapes) {
      const { length, width } = shape;
      const rowHomes = rows.homes(width + ripKerf);
      const taken = length + crosscutKerf;
      const columnHomes = columns.homes(taken);
      for (const column of columnHomes) for (const row of rowHomes) put(column, row, shape);
      if (side === 'bound') continue;
      // A run may be crosscut in a wider strip and each of its pieces ripped: then the strip is all its own.
      if (run !== undefined && net.levels > 1) {
        const all = Array.from(rows.size, (size, row) => (size > width + ripKerf ? row : -1));
        const wider = all.filter((row) => row >= 0 && !rowHomes.includes(row));
        for (const column of columnHomes) for (const row of wider) put(column, row, shape, true);
      }
      if (taken >= ripFrom) continue;
      // Too short to be ripped by itself: it may be freed from a longer workpiece.
      const wide = rowHomes.filter((row) => rows.size[row] !== width + ripKerf);
      for (const column of columns.homes(ripFrom)) for (const row of wide) put(column, row, shape);
    }
  }
  found.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const list = (at: 0 | 1 | 2 | 3 | 4 | 5): Int32Array => Int32Array.from(found, (leaf) => leaf[at]);
  return {
    state: list(0),
    kind: list(1),
    clearance: list(2),
    length: list(3),
    width: list(4),
    offset: list(5),
  };
}

/** Where a kind may lie: under which of its clearances (−1: none), and the tops of what is in its way, the lowest first. */
function openPlaces(
  { freeOf, ofKind, blocks }: Clearances,
  kind: number,
): { readonly under: (piece: Rectangle) => number; readonly tops: readonly number[] } {
  const free = freeOf[kind]!;
  const own = free >= 0 ? [] : ofKind[kind]!;
  const isClear = (clearance: number, piece: Rectangle): boolean =>
    !blocks[clearance]!.some((block) => overlaps(block, piece));
  const tops = own.flatMap((clearance) => blocks[clearance]!.map(({ y, width }) => y + width));
  return {
    under: (piece) => (free >= 0 ? free : (own.find((clearance) => isClear(clearance, piece)) ?? -1)),
    tops: [...new Set(tops)].sort((a, b) => a - b),
  };
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
