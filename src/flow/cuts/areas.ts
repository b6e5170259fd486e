import { type Rectangle, area } from '../../base/geometry/rectangle.ts';
import type { Areas, Cut } from './layout.ts';

/** Square ticks a cut turns to dust: its kerf where it lies on the workpiece. */
export function kerfArea(cut: Pick<Cut, 'kind' | 'region' | 'at' | 'kerf'>): number {
  const { kind, region, at, kerf } = cut;
  const start = kind === 'crosscut' ? region.x : region.y;
  const end = start + (kind === 'crosscut' ? region.length : region.width);
  const across = kind === 'crosscut' ? region.width : region.length;
  return Math.max(0, Math.min(end, at + kerf) - Math.max(start, at)) * across;
}

/**
 * Where the board's square ticks go. Trim is all that lies outside the usable rectangle, the kerfs of the trim cuts
 * included; kerf is that of the other cuts; parts are blanks, allowances included; scrap is the rest. Exact.
 */
export function areasOf(given: {
  readonly board: { readonly length: number; readonly width: number };
  readonly usable: Rectangle;
  readonly pieces: readonly Rectangle[];
  readonly offcuts: readonly Rectangle[];
  readonly cuts: readonly Cut[];
}): Areas {
  const sum = (regions: readonly Rectangle[]): number => regions.reduce((total, r) => total + area(r), 0);
  const board = given.board.length * given.board.width;
  const trim = board - area(given.usable);
  const parts = sum(given.pieces);
  const offcuts = sum(given.offcuts);
  const isTrim = (cut: Cut): boolean => cut.purpose === 'end trim' || cut.purpose === 'edge trim';
  const kerf = given.cuts.filter((cut) => !isTrim(cut)).reduce((total, cut) => total + kerfArea(cut), 0);
  return { board, parts, offcuts, kerf, trim, scrap: board - trim - parts - offcuts - kerf };
}
