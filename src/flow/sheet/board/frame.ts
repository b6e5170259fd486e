import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import type { Box } from './box.ts';
import type { Reach } from './scale.ts';

/** Drawing units left of the board for ruler, butt end and cut numbers, and right of it for cut numbers. */
export const leftMargin = 206;
export const rightMargin = 60;
export const sheetWidth = 1840;

/**
 * One row's map from board to paper. The row's own coordinates: x on the sheet, y = 0 at the board's far edge.
 *
 *   y = 0  ┌──────────── far edge ──────────┐
 *   butt   │  x from the butt end →         │   The board lies face A up, as at the bench: near edge
 *   end    │                                │   towards the reader, so board y grows up the paper.
 *   height └──────────── near edge ─────────┘
 */
export interface Frame extends Reach {
  /** Ticks to one drawing unit. */
  readonly unit: number;
  /** Ticks. */
  readonly boardLength: number;
  readonly boardWidth: number;
  /** The board in this row, drawing units. */
  readonly board: Box;
}

/** The map of one row, its board set at the left margin; never thinner than a unit. */
export function frameOf(reach: Reach, unit: number, boardLength: number, boardWidth: number): Frame {
  const board = {
    x: leftMargin,
    y: 0,
    w: Math.max(1, Math.round((reach.to - reach.from) / unit)),
    h: Math.max(1, Math.round(boardWidth / unit)),
  };
  return { ...reach, unit, boardLength, boardWidth, board };
}

/** Board x (ticks) on the paper; may lie outside the row. */
export function paperX(frame: Frame, x: number): number {
  return leftMargin + Math.round((x - frame.from) / frame.unit);
}

/** Board y (ticks from the near edge) on the paper. */
export function paperY(frame: Frame, y: number): number {
  return Math.round((frame.boardWidth - y) / frame.unit);
}

/** What of a rectangle (ticks) shows in the row; null when none of it does. */
export function boxInRow(frame: Frame, rectangle: Rectangle): Box | null {
  const from = Math.max(rectangle.x, frame.from);
  const to = Math.min(rectangle.x + rectangle.length, frame.to);
  if (from >= to) return null;
  const x = paperX(frame, from);
  const y = paperY(frame, rectangle.y + rectangle.width);
  return { x, y, w: paperX(frame, to) - x, h: paperY(frame, rectangle.y) - y };
}
