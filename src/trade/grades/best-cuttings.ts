import { type Rectangle, overlaps } from '../../base/geometry/rectangle.ts';
import { clearAreas, keepingClear } from './clear-areas.ts';
import { type CutLines, cutLines } from './cut-lines.ts';
import { type CuttingSize, isCutting } from './cutting-size.ts';
import { type CuttingRecord, partAreas } from './disjoint-cuttings.ts';
import { uncovered, unionArea } from './union-area.ts';

/** One face to be cut up on paper. All lengths in ticks. */
export interface CuttingTask {
  readonly board: Rectangle;
  /** What no cutting may touch; may stick out of the board and overlap. */
  readonly blocked: readonly Rectangle[];
  readonly size: CuttingSize;
  /** Most cuttings allowed; Infinity where the grade sets no limit. */
  readonly atMost: number;
}

/** Cuttings found, their area, and a proven bound on the area of any: exact when the two are equal. */
export interface CuttingAnswer {
  readonly cuttings: readonly Rectangle[];
  /** Square ticks. */
  readonly area: number;
  /** No allowed set of cuttings has a larger area. Square ticks. */
  readonly bound: number;
}

/** Without a limit on their number the search tries this many cuttings at once; more are left to the first guess. */
const mostSearched = 7;
/** Largest areas from which the first guess is tried. */
const greedyStarts = 8;

/**
 * The largest total area of at most `atMost` disjoint clear cuttings, each with its length along the board.
 * Cuttings need not be got by through cuts, and the saw takes nothing: a grade measures wood, not a plan.
 *
 * Every cutting lies in one of the largest clear areas, so: choose a clear area for each cutting (the same one may
 * serve twice), bounded by what the chosen ones cover plus the most that the remaining choices could add (coverage is
 * submodular, so gains only fall); then part those that overlap (`partAreas`).
 * Not guillotine only: four cuttings round a knot like the sails of a mill are found.
 *
 * @param effort nodes of the search, > 0; when they run out the answer is a lower bound and `bound` says how good
 * @param enough stop as soon as this area is reached, and look for nothing less; then `bound` only tells whether it can
 *   be reached: it is below `enough` when it provably cannot
 */
export function bestCuttings(task: CuttingTask, effort: number, enough?: number): CuttingAnswer {
  const { board, blocked, size } = task;
  const holes = blocked.filter((hole) => overlaps(hole, board));
  const areas = clearAreas(board, holes, (area) => isCutting(area, size));
  const coverable = unionArea(areas);
  const guess = greedyCuttings(areas, size, task.atMost, enough ?? Infinity);
  const area = guess.reduce((sum, { length, width }) => sum + length * width, 0);
  const wanted = enough ?? Infinity;
  if (areas.length === 0 || task.atMost < 1) return { cuttings: [], area: 0, bound: 0 };
  if (area >= Math.min(coverable, wanted)) return { cuttings: guess, area, bound: coverable };
  const record: CuttingRecord = {
    cuttings: guess,
    area,
    floor: enough === undefined ? area : Math.max(area, enough - 1),
    wanted,
    budget: effort,
    skipped: 0,
  };
  if (coverable <= record.floor) return { cuttings: guess, area, bound: coverable };
  const count = Math.min(task.atMost, mostSearched);
  choose([], 0, 0, { areas, count, lines: once(() => cutLines(board, holes, size, count)), size, record });
  // 3B's least area breaks the argument for the lines, and an unlimited number was not searched: no proof then.
  const searchedAll = size.leastArea === 0 && task.atMost <= mostSearched;
  const proven =
    record.area >= wanted ? coverable : Math.min(coverable, Math.max(record.floor, record.skipped));
  return { cuttings: record.cuttings, area: record.area, bound: searchedAll ? proven : coverable };
}

interface Search {
  readonly areas: readonly Rectangle[];
  readonly count: number;
  readonly lines: () => CutLines;
  readonly size: CuttingSize;
  readonly record: CuttingRecord;
}

/** Works a value out when it is first asked for, and keeps it. */
function once<T>(work: () => T): () => T {
  let kept: { readonly value: T } | null = null;
  return () => (kept ??= { value: work() }).value;
}

/** Chooses a clear area for each cutting, in the areas' order, so that no set of them is looked at twice. */
function choose(chosen: readonly Rectangle[], covered: number, from: number, search: Search): void {
  const { areas, count, record } = search;
  if (record.area >= record.wanted) return;
  const left = count - chosen.length;
  if (left === 0) {
    partAreas(chosen, search.lines, search.size, record);
    return;
  }
  const gains = areas.slice(from).map((area) => uncovered(area, chosen));
  const bound = covered + sumOfLargest(gains, left);
  if (bound <= record.floor) return;
  if (record.budget <= 0) {
    record.skipped = Math.max(record.skipped, bound);
    return;
  }
  record.budget -= 1;
  for (let index = from; index < areas.length; index += 1) {
    choose([...chosen, areas[index]!], covered + gains[index - from]!, index, search);
  }
}

function sumOfLargest(values: readonly number[], count: number): number {
  return [...values]
    .sort((a, b) => b - a)
    .slice(0, count)
    .reduce((sum, value) => sum + value, 0);
}

/** A first guess: the largest clear cutting, again and again; each of the largest few areas is tried as the start. */
function greedyCuttings(
  areas: readonly Rectangle[],
  size: CuttingSize,
  atMost: number,
  wanted: number,
): Rectangle[] {
  const admits = (area: Rectangle): boolean => isCutting(area, size);
  let best: Rectangle[] = [];
  let most = 0;
  for (const start of areas.slice(0, greedyStarts)) {
    if (most >= wanted) break;
    const taken = [start];
    let left = keepingClear(areas, start, admits);
    while (taken.length < atMost && left.length > 0) {
      const next = left.reduce((a, b) => (b.length * b.width > a.length * a.width ? b : a));
      taken.push(next);
      left = keepingClear(left, next, admits);
    }
    const area = taken.reduce((sum, { length, width }) => sum + length * width, 0);
    if (area > most) {
      most = area;
      best = taken;
    }
  }
  return best;
}
