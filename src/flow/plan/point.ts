import { turnBy } from './turn.ts';

/** A point of the plan view from above, ticks (not whole): x along the front leg, y away from the room, into the wall. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where a leg begins and which way it runs: the map from the leg's own measure to the plan. */
export interface Frame {
  readonly origin: Point;
  /** Degrees, counted towards the wall from the front leg's direction. */
  readonly heading: number;
}

/**
 * A point of a leg: `along` its wall from its left corner, `off` the wall towards the room, both ticks.
 * The room lies to the right of one who walks the wall from left to right.
 */
export function pointOf(frame: Frame, along: number, off: number): Point {
  const { sin, cos } = turnBy(frame.heading);
  return {
    x: frame.origin.x + along * cos + off * sin,
    y: frame.origin.y + along * sin - off * cos,
  };
}
