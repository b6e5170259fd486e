import { turnBy } from './turn.ts';

/**
 * How the panel of a leg ends at a corner: in a miter from the wall corner to the corner of the carcass; running on behind
 * the neighbour's facing; or butting against the neighbour that runs on. `square`: there is no corner.
 */
export type PanelEnd = 'square' | 'miter' | 'runs on' | 'butts';

/**
 * How far the front edge of a leg's carcass runs past the wall corner: (d2 - d1 cos φ) / sin φ. Negative: it stops short,
 * as it does at every inside corner.
 *
 *       wall ────────────┐ corner
 *                    d1  │φ     The two front edges are parallels of the walls at d1 and d2; the run past is
 *       ─────────────────┼──┐   where they meet, measured along the first wall.
 *          front edge        │
 *
 * @param own its projection d1   @param neighbour the next leg's d2   @param turn φ in degrees, not 0 or ±180
 * Source: plane geometry; hand-worked at 90, 45 and 135 degrees in the tests.
 */
export function runPast(own: number, neighbour: number, turn: number): number {
  const { sin, cos } = turnBy(turn);
  return (neighbour - own * cos) / sin;
}

/** Where a panel ends, measured past the wall corner: along the wall, and along its front edge. */
export interface PanelReach {
  readonly atWall: number;
  readonly atFront: number;
}

/**
 * Where a leg's top or bottom panel ends at a corner.
 * - miter: from the wall corner to the corner of the carcass.
 * - butt, outside corner: the panel that runs on ends along the neighbour's front edge, its back edge going straight on past
 *   the wall corner; the other one butts against that back edge.
 * - butt, inside corner: the panel that runs on ends along the neighbour's wall; the other one butts against its front edge.
 */
export function panelReach(end: PanelEnd, own: number, neighbour: number, turn: number): PanelReach {
  if (end === 'square') return { atWall: 0, atFront: 0 };
  const front = runPast(own, neighbour, turn);
  if (end === 'miter') return { atWall: 0, atFront: front };
  const { sin, cos } = turnBy(turn);
  // At an outside corner the panel that runs on, and at an inside corner the one that butts, ends on the neighbour's front edge.
  if ((end === 'runs on') === turn > 0) return { atWall: neighbour / sin, atFront: front };
  return { atWall: 0, atFront: (-own * cos) / sin };
}

/** Butted panels need a corner near enough to square; round any other the panels are mitered, as a butt would taper long. */
export function cornerCanButt(turn: number): boolean {
  return Math.abs(turn) >= 60 && Math.abs(turn) <= 120;
}
