import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { ticksPerInch } from '../../base/units/tick.ts';
import { offcutMeasure } from '../cuts/score.ts';
import type { Board } from '../stock/board.ts';
import { carryDefects } from './carry.ts';
import type { Need } from './need.ts';
import { type Kerfs, usefulness } from './usefulness.ts';

/** Steps of usefulness that count: hundredths of a square inch. */
const stepsPerSquareInch = 100;
/** More than `offcutMeasure` of any board that a saw can hold, so that usefulness always comes first. */
const aboveMeasure = 1e9;

/**
 * What an offcut of a board will be good for, as one whole number to compare by: its usefulness (see `usefulness`), and
 * where two are equally useful, its size.
 * @param needs what later jobs may want: the journal's history, or the usual sizes
 */
export function offcutWorth(
  needs: readonly Need[],
  kerf: Kerfs,
): (board: Board, region: Rectangle) => number {
  const known = new Map<Board, Map<string, number>>();
  return (board, region) => {
    const ofBoard = known.get(board) ?? new Map<string, number>();
    known.set(board, ofBoard);
    const key = `${region.x} ${region.y} ${region.length} ${region.width}`;
    const before = ofBoard.get(key);
    if (before !== undefined) return before;
    const defects = carryDefects(board.defects, region, 'as cut');
    const useful = usefulness({ ...region, dressedThickness: board.dressedThickness, defects }, needs, kerf);
    const steps = Math.round((useful / ticksPerInch ** 2) * stepsPerSquareInch);
    const worth = steps * aboveMeasure + Math.min(offcutMeasure(region), aboveMeasure - 1);
    ofBoard.set(key, worth);
    return worth;
  };
}
