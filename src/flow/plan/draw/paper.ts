import type { Outline } from '../outline.ts';
import type { Point } from '../point.ts';

/** A place on the paper: whole drawing units (0.1 mm when printed at full size), y downward. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A map from the plan (ticks, y into the wall) to the paper (y downward, so the wall is at the top). */
export interface Paper {
  /** Ticks to one drawing unit. */
  readonly unit: number;
  /** Where the plan's origin comes to lie. */
  readonly origin: Spot;
}

/** The smallest upright rectangle round points, ticks. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** Bounds of at least one point. */
export function boundsOf(points: readonly Point[]): Bounds {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

/** A point of the plan on the paper. */
export function spotOf(paper: Paper, point: Point): Spot {
  return {
    x: Math.round(paper.origin.x + point.x / paper.unit),
    y: Math.round(paper.origin.y - point.y / paper.unit),
  };
}

/** An outline as an SVG path, closed. */
export function closedPath(paper: Paper, outline: Outline): string {
  return `${openPath(paper, outline)}Z`;
}

/** A line through points as an SVG path. */
export function openPath(paper: Paper, line: Outline): string {
  return line
    .map((point, index) => {
      const { x, y } = spotOf(paper, point);
      return `${index === 0 ? 'M' : 'L'}${x} ${y}`;
    })
    .join('');
}
