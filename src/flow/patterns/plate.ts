import type { Rectangle } from '../../base/geometry/rectangle.ts';

/**
 * One board as the pricing sees it: the usable rectangle moved to the origin, all lengths in ticks.
 * Which face shows and which quality is asked have become clearances: a clearance is the set of
 * rectangles that a piece placed under it must not overlap.
 */
export interface Plate {
  readonly length: number;
  readonly width: number;
  readonly crosscutKerf: number;
  readonly ripKerf: number;
  /** No workpiece shorter than this is ripped. */
  readonly shortestRip: number;
  /** How deep crosscuts and rips may nest; the first crosscuts of the plate are stage 1. */
  readonly stages: number | 'any';
  readonly clearances: readonly (readonly Rectangle[])[];
}

/** A rectangle as it would lie on the plate: `length` along the board. */
export interface Shape {
  readonly length: number;
  readonly width: number;
}

/** One kind of blank that may be cut from the plate. */
export interface Kind {
  /** One shape, or two where the grain may run either way. */
  readonly shapes: readonly Shape[];
  /** At most this many on one plate. */
  readonly cap: number;
  /** Indices of the plate's clearances under which the kind may lie (any one suffices); empty: never on this plate. */
  readonly clearances: readonly number[];
  /** For a run, which is crosscut into several pieces after all. Left out for a kind that is one piece. */
  readonly run?: RunPieces;
}

/** The pieces of a run. Nothing may lie beside them in their strip. */
export interface RunPieces {
  /** Length of the shortest. */
  readonly shortest: number;
  /** Whether all are as wide as the run; if not, the narrower ones are ripped once more, and must be long enough for that. */
  readonly isEven: boolean;
}

/** A blank on the plate, in plate coordinates. */
export interface Placement extends Rectangle {
  readonly kind: number;
  /** The clearance it lies under: one of the kind's. */
  readonly clearance: number;
}

/** A way to cut one plate, and what its pieces are worth together. */
export interface PlatePattern {
  readonly placements: readonly Placement[];
  readonly value: number;
}
