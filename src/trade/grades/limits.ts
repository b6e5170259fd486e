import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { ticksPerInch } from '../../base/units/tick.ts';
import {
  type BoardFace,
  type MarkedBoard,
  type MarkedDefect,
  isOn,
  isUnsoundForGrade,
} from './marked-board.ts';
import { unionArea } from './union-area.ts';

/** A limit of the better grades on what a face may show, and what it shows. Both in `unit`. */
export interface Limit {
  readonly what: 'pith' | 'wane length' | 'wane width' | 'knot or hole' | 'split' | 'unsound end';
  readonly face: BoardFace;
  readonly allowed: number;
  readonly found: number;
  /** `ticks`: a length, not always whole; `share`: a part of an area, 0 to 1. */
  readonly unit: 'ticks' | 'share';
}

/**
 * The limits that FAS sets for a face, held or not, as far as marked rectangles can tell.
 * From memory, the chart prints only short entries (TRADE 2.3): pith, together, no longer in inches than the SM; wane
 * along either edge no longer than half the board; average diameter of a knot or hole no more inches than a third of
 * the SM; splits, together, no longer in inches than twice the SM, or 12 in if that is more; no more than a quarter of
 * the first foot at each end unsound. Not judged, since a rectangle does not tell: how far a split runs aside, warp.
 */
export function faceLimits(board: MarkedBoard, face: BoardFace, surfaceMeasure: number): readonly Limit[] {
  const shown = board.defects.filter((defect) => isOn(defect, face));
  const of = (...kinds: string[]): MarkedDefect[] => shown.filter(({ kind }) => kinds.includes(kind));
  const length = (found: number, allowed: number, what: Limit['what']): Limit => ({
    what,
    face,
    allowed,
    found,
    unit: 'ticks',
  });
  const knots = of('sound knot', 'loose knot', 'hole').map((knot) => (knot.length + knot.width) / 2);
  return [
    length(sum(of('pith').map((pith) => pith.length)), surfaceMeasure * ticksPerInch, 'pith'),
    length(waneLength(board, of('wane')), board.length / 2, 'wane length'),
    length(Math.max(0, ...knots), (surfaceMeasure / 3) * ticksPerInch, 'knot or hole'),
    length(
      sum(of('split').map((split) => split.length)),
      Math.max(2 * surfaceMeasure, 12) * ticksPerInch,
      'split',
    ),
    {
      what: 'unsound end',
      face,
      allowed: 0.25,
      found: unsoundEnd(board, shown.filter(isUnsoundForGrade)),
      unit: 'share',
    },
  ];
}

/**
 * The limits of F1F and Selects for the poor face: wane, its widest on both edges added, no wider than a third of the
 * board, and along either edge no longer than half of it. Source: TRADE 2.3 (S18), read as two limits, both to be held.
 */
export function poorFaceLimits(board: MarkedBoard, face: BoardFace): readonly Limit[] {
  const wane = board.defects.filter((defect) => defect.kind === 'wane' && isOn(defect, face));
  const widest = (near: boolean): number =>
    Math.max(0, ...wane.filter((defect) => isNear(board, defect) === near).map(({ width }) => width));
  return [
    {
      what: 'wane width',
      face,
      allowed: board.width / 3,
      found: widest(true) + widest(false),
      unit: 'ticks',
    },
    {
      what: 'wane length',
      face,
      allowed: board.length / 2,
      found: waneLength(board, wane),
      unit: 'ticks',
    },
  ];
}

/** Whether what was found stays within what is allowed; just as much is held. */
export function isHeld(limit: Limit): boolean {
  return limit.found <= limit.allowed;
}

/** The longer of what the two edges have of wane. */
function waneLength(board: MarkedBoard, wane: readonly MarkedDefect[]): number {
  const along = (near: boolean): number =>
    sum(wane.filter((defect) => isNear(board, defect) === near).map(({ length }) => length));
  return Math.max(along(true), along(false));
}

/** Whether a defect lies nearer the near edge. */
function isNear(board: MarkedBoard, defect: Rectangle): boolean {
  return defect.y + defect.width / 2 <= board.width / 2;
}

/** The larger unsound share of the first foot at either end. */
function unsoundEnd(board: MarkedBoard, unsound: readonly MarkedDefect[]): number {
  const foot = Math.min(12 * ticksPerInch, board.length);
  const share = (from: number): number => {
    const clipped = unsound
      .map((defect) => {
        const x = Math.max(from, defect.x);
        const y = Math.max(0, defect.y);
        const length = Math.min(from + foot, defect.x + defect.length) - x;
        return { x, y, length, width: Math.min(board.width, defect.y + defect.width) - y };
      })
      .filter(({ length, width }) => length > 0 && width > 0);
    return unionArea(clipped) / (foot * board.width);
  };
  return Math.max(share(0), share(board.length - foot));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
