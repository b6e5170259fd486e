import type { Cut, LaidBoard } from '../../cuts/layout.ts';
import { type Box, collide } from './box.ts';
import { type Flag, flagHeight, flagWidth } from './flag.ts';
import { boxInRow, type Frame } from './frame.ts';
import type { Lane, LaneRequest } from './lanes.ts';

/** A cut as it shows in one row. */
export interface CutInRow {
  readonly cut: Cut;
  readonly title: string;
  /** What the blade takes away, to scale but never thinner than can be seen. */
  readonly kerf: Box;
}

const thinnestKerf = 3;

/** The cuts that show in a row, in order. A crosscut shows in the row its blade enters. */
export function cutsInRow(board: LaidBoard, frame: Frame, titleOf: (cut: Cut) => string): CutInRow[] {
  return board.cuts.flatMap((cut): CutInRow[] => {
    const { region, at } = cut;
    const rectangle =
      cut.kind === 'crosscut'
        ? { ...region, x: at, length: Math.max(1, Math.min(cut.kerf, region.x + region.length - at)) }
        : { ...region, y: at, width: Math.max(1, Math.min(cut.kerf, region.y + region.width - at)) };
    const box = boxInRow(frame, rectangle);
    return box === null ? [] : [{ cut, title: titleOf(cut), kerf: visible(box, cut.kind) }];
  });
}

function visible(box: Box, kind: Cut['kind']): Box {
  if (kind === 'crosscut') return { ...box, w: Math.max(thinnestKerf, box.w), h: Math.max(1, box.h) };
  return { ...box, h: Math.max(thinnestKerf, box.h), w: Math.max(1, box.w) };
}

/** Cuts that end this near to the edge of the board (past a trim, say) are numbered from outside. */
const nearEdge = 34;

/** The lane a cut is numbered from, or null when it touches no edge and is numbered where it runs. */
export function laneOf(kerf: Box, kind: Cut['kind'], board: Box): Lane | null {
  if (kind === 'crosscut') {
    if (kerf.y - board.y <= nearEdge) return 'above';
    return board.y + board.h - kerf.y - kerf.h <= nearEdge ? 'below' : null;
  }
  if (kerf.x - board.x <= nearEdge) return 'left';
  return board.x + board.w - kerf.x - kerf.w <= nearEdge ? 'right' : null;
}

/** What a lane needs to know of a cut: it is marked where it comes nearest to that lane. */
export function laneRequest(cut: CutInRow, lane: Lane): LaneRequest {
  const { kerf } = cut;
  const middleX = kerf.x + Math.round(kerf.w / 2);
  const middleY = kerf.y + Math.round(kerf.h / 2);
  const x = lane === 'left' ? kerf.x : lane === 'right' ? kerf.x + kerf.w : middleX;
  const y = lane === 'above' ? kerf.y : lane === 'below' ? kerf.y + kerf.h : middleY;
  return { kind: 'cut', text: String(cut.cut.step), title: cut.title, x, y };
}

/**
 * A place on the cut's own line for its number: the first along the line that is clear of all else, else the
 * first that covers only what it may (`soft`). Null when there is none inside the board.
 */
export function placeOnLine(
  cut: CutInRow,
  board: Box,
  hard: readonly Box[],
  soft: readonly Box[],
): Flag | null {
  const text = String(cut.cut.step);
  const w = flagWidth(text);
  const free = lineCandidates(cut.kerf, cut.cut.kind, w).filter(
    (box) => insideOf(board, box) && !hard.some((obstacle) => collide(obstacle, box)),
  );
  const box = free.find((candidate) => !soft.some((obstacle) => collide(obstacle, candidate))) ?? free[0];
  return box ? { kind: 'cut', text, title: cut.title, box, leader: '' } : null;
}

function lineCandidates(kerf: Box, kind: Cut['kind'], w: number): Box[] {
  const isRip = kind === 'rip';
  const x = kerf.x + Math.round((kerf.w - w) / 2);
  const y = kerf.y + Math.round((kerf.h - flagHeight) / 2);
  const [start, extent, size] = isRip ? [kerf.x, kerf.w, w] : [kerf.y, kerf.h, flagHeight];
  if (extent < size + 8) return [{ x, y, w, h: flagHeight }];
  const count = Math.floor((extent - size - 8) / 6) + 1;
  return Array.from({ length: count }, (_, index) => {
    const at = start + 4 + index * 6;
    return isRip ? { x: at, y, w, h: flagHeight } : { x, y: at, w, h: flagHeight };
  });
}

function insideOf(board: Box, box: Box): boolean {
  return (
    box.x >= board.x &&
    box.y >= board.y &&
    box.x + box.w <= board.x + board.w &&
    box.y + box.h <= board.y + board.h
  );
}
