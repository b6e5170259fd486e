import type { Unrolled } from './unrolled.ts';

/** What one welcome defect in view is worth in points of look, and all of them together at most. Our own measure. */
export const favourOfOne = 0.5;
export const mostFavour = 2;

/** The measure in words, for wherever it is used. */
export const measureWords =
  'Look is yours, 0 to 10 (look A, look B in boards.csv). Each defect in view that the part welcomes (accept) adds 1/2, all together at most 2.';

/** How many defects in view the maker welcomes. A defect that a corner parts counts once. */
export function welcomeInView({ pieces }: Unrolled): number {
  return new Set(
    pieces.flatMap(({ marks }) => marks.filter((mark) => mark.isWelcome).map(({ defect }) => defect)),
  ).size;
}

/** Look with the favour of what is welcome in view. */
export function lookMeasure(look: number, welcome: number): number {
  return look + Math.min(mostFavour, favourOfOne * welcome);
}
