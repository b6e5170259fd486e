import { type Rectangle, contains } from '../../base/geometry/rectangle.ts';
import type { Cut, LaidBoard } from './layout.ts';
import type { CutKind } from './stage.ts';

/** One cut and the position its fence or stop stands at. */
export interface SetCut {
  readonly board: LaidBoard;
  readonly cut: Cut;
  /** Fence to blade for a rip, stop to blade for a crosscut, ticks. */
  readonly position: number;
}

interface Choosable {
  readonly board: LaidBoard;
  readonly cut: Cut;
  /** One or two positions, any of which makes the cut. */
  readonly positions: readonly number[];
}

/**
 * Where the fence or stop stands for each cut that is not a trim.
 *
 * The workpiece lies with one side against the fence (rip) or stop (crosscut); the position is the size of what lies
 * between it and the blade. Either side of the cut can lie there, but one that is measured holds a piece, so a side
 * that is only leftover is not set against the fence unless both are. Where both sides would do, positions shared
 * with other cuts are preferred: the position that serves most cuts is taken first (ties: the larger), then the one
 * that serves most of the rest, and so on. Trims take no setting: ends are squared by eye, a rough edge is
 * straightened with a sled or a straight line, before anything can lie against the fence.
 */
export function settings(boards: readonly LaidBoard[]): SetCut[] {
  return (['rip', 'crosscut'] as const).flatMap((kind) => shared(choosable(boards, kind)));
}

/**
 * How many fence and stop positions a layout needs: each distinct one once, over all boards, rips and crosscuts
 * apart.
 */
export function countSetups(boards: readonly LaidBoard[]): number {
  return new Set(settings(boards).map(({ cut, position }) => `${cut.kind} ${position}`)).size;
}

function choosable(boards: readonly LaidBoard[], kind: CutKind): Choosable[] {
  return boards.flatMap((board) =>
    board.cuts
      .filter((cut) => cut.kind === kind && cut.purpose !== 'end trim' && cut.purpose !== 'edge trim')
      .map((cut) => ({ board, cut, positions: positionsOf(board, cut) })),
  );
}

function positionsOf(board: LaidBoard, cut: Cut): number[] {
  const { kind, region, at, kerf } = cut;
  const start = kind === 'crosscut' ? region.x : region.y;
  const size = kind === 'crosscut' ? region.length : region.width;
  const startOf = (r: Rectangle): number => (kind === 'crosscut' ? r.x : r.y);
  const inside = board.pieces.filter((piece) => contains(region, piece));
  const near = inside.some((piece) => startOf(piece) < at) ? [at - start] : [];
  const far = inside.some((piece) => startOf(piece) >= at + kerf) ? [start + size - at - kerf] : [];
  const held = [...near, ...far];
  return held.length > 0 ? held : [at - start, start + size - at - kerf].filter((position) => position > 0);
}

/** Gives every cut one of its positions by the greedy rule above; the order of the cuts is kept. */
function shared(cuts: readonly Choosable[]): SetCut[] {
  const chosen = new Map<Choosable, number>();
  const open = new Set(cuts);
  while (open.size > 0) {
    const served = new Map<number, number>();
    for (const { positions } of open) {
      for (const position of new Set(positions)) served.set(position, (served.get(position) ?? 0) + 1);
    }
    const [best] = [...served].sort((a, b) => b[1] - a[1] || b[0] - a[0]);
    if (best === undefined) break;
    for (const cut of [...open]) {
      if (!cut.positions.includes(best[0])) continue;
      chosen.set(cut, best[0]);
      open.delete(cut);
    }
  }
  return cuts.flatMap((entry) => {
    const position = chosen.get(entry);
    return position === undefined ? [] : [{ board: entry.board, cut: entry.cut, position }];
  });
}
