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
 * @param own the depth d1 of its carcass: finished projection less the facing   @param neighbour the next leg's d2   @param turn φ in degrees, not 0 or ±180
 * Source: plane geometry; hand-worked at 90, 45 and 135 degrees in the tests.
 */
export function runPast(own: number, neighbour: number, turn: number): number {
  const { sin, cos } = turnBy(turn);
  return (neighbour - own * cos) / sin;
}

/** Where a panel ends, measured past the wall corner: along its back edge, and along its front edge. */
export interface PanelReach {
  readonly atBack: number;
  readonly atFront: number;
}

/** The two edges of a panel, by how far they stand off its wall, ticks. */
export interface PanelEdges {
  readonly back: number;
  readonly front: number;
}

/**
 * Where a leg's top or bottom panel ends at a corner.
 * - miter: from where the back edges meet to where the front edges meet.
 * - butt, outside corner: the panel that runs on ends along the neighbour's front edge, its back edge going straight on past
 *   the wall corner; the other one butts against that back edge.
 * - butt, inside corner: the panel that runs on ends along the neighbour's back edge, at the wall; the other one butts against
 *   its front edge.
 */
export function panelReach(end: PanelEnd, own: PanelEdges, neighbour: PanelEdges, turn: number): PanelReach {
  if (end === 'square') return { atBack: 0, atFront: 0 };
  const meet = (edge: 'back' | 'front', off: number): number => runPast(own[edge], off, turn);
  if (end === 'miter')
    return { atBack: meet('back', neighbour.back), atFront: meet('front', neighbour.front) };
  // At an outside corner the panel that runs on, and at an inside corner the one that butts, ends on the neighbour's front edge.
  const off = (end === 'runs on') === turn > 0 ? neighbour.front : neighbour.back;
  return { atBack: meet('back', off), atFront: meet('front', off) };
}

/** Butted panels need a corner near enough to square; round any other the panels are mitered, as a butt would taper long. */
export function cornerCanButt(turn: number): boolean {
  return Math.abs(turn) >= 60 && Math.abs(turn) <= 120;
}
