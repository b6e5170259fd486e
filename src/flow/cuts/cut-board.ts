import type { BoardPattern, PlacedPiece } from '../choice/choice.ts';
import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Board } from '../stock/board.ts';
import type { Job } from '../stock/job.ts';
import { cutOrder } from './cut-order.ts';
import { type CutNode, type CutRules, type Favoured, cutTree } from './cut-tree.ts';
import { junctions } from './junctions.ts';
import type { Cut } from './layout.ts';
import { isKeepable, offcutMeasure } from './score.ts';
import { trims } from './trims.ts';

/** How one board copy is cut up. */
export interface BoardCuts {
  readonly board: Board;
  readonly usable: Rectangle;
  readonly cuts: readonly Cut[];
  /** Leftovers worth keeping, from the butt end on, then from the near edge on. */
  readonly offcuts: readonly Rectangle[];
}

/** What an offcut of this region of the board is good for: a whole number, more is better. */
export type OffcutWorth = (board: Board, region: Rectangle) => number;

/**
 * The cut sequence of one board: trims, then the best legal tree (`cutTree`).
 * @param favoured settings the whole job needs; `favouredSettings` gives them
 * @param worth of offcuts, where the cuts leave a choice; size alone counts without it
 * @returns null when no sequence within the shop's rules frees the pieces
 */
export function cutBoard(
  job: Job,
  pattern: BoardPattern,
  favoured: Favoured,
  worth?: OffcutWorth,
): BoardCuts | null {
  const board = job.boards[pattern.board];
  if (board === undefined) throw new RangeError(`no board ${pattern.board}`);
  const rules = rulesOf(job, worth === undefined ? offcutMeasure : (region) => worth(board, region));
  const trimmed = trims(board, job.shop);
  const tree = cutTree({
    workpiece: trimmed.usable,
    pieces: pattern.pieces,
    junctions: junctions(pattern.pieces, job.parts, job.shop),
    rules,
    favoured,
  });
  if (tree === null) return null;
  const cuts = [...trimmed.cuts, ...cutOrder(tree)].map((cut, index) => ({ step: index + 1, ...cut }));
  const offcuts = leftovers(tree).filter((region) => isKeepable(region, rules));
  offcuts.sort((a, b) => a.x - b.x || a.y - b.y);
  return { board, usable: trimmed.usable, cuts, offcuts };
}

/**
 * `cutBoard` for many boards of a job: equal boards with pieces of equal parts at equal places are worked out once. Boards
 * with a run are not compared, since their cuts know one run from another.
 */
export function boardCutter(
  job: Job,
  favoured: Favoured,
  worth?: OffcutWorth,
): (pattern: BoardPattern) => BoardCuts | null {
  const known = new Map<string, BoardCuts | null>();
  return (pattern) => {
    if (pattern.pieces.some(({ run }) => run !== undefined)) return cutBoard(job, pattern, favoured, worth);
    const places = pattern.pieces.map(({ part, x, y, length, width }) => [part, x, y, length, width].join());
    const key = `${pattern.board}: ${places.join(' ')}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const made = cutBoard(job, pattern, favoured, worth);
    known.set(key, made);
    return made;
  };
}

function rulesOf(job: Job, offcutWorth: CutRules['offcutWorth']): CutRules {
  const { crosscutKerf, ripKerf, shortestRip, stages, leastOffcutLength, leastOffcutWidth } = job.shop;
  const offcutsEarn = job.shop.goal === 'least cost' && job.shop.offcutCredit > 0;
  return {
    crosscutKerf,
    ripKerf,
    shortestRip,
    stages,
    leastOffcutLength,
    leastOffcutWidth,
    offcutsEarn,
    offcutWorth,
  };
}

function leftovers(node: CutNode | null): Rectangle[] {
  if (node === null || node.kind === 'piece') return [];
  if (node.kind === 'leftover') return [node.region];
  return [...leftovers(node.before), ...leftovers(node.after)];
}

/** The stop lengths and fence widths of all pieces: cuts at these positions share a setting. */
export function favouredSettings(pieces: readonly PlacedPiece[]): Favoured {
  return {
    lengths: new Set(pieces.map((piece) => piece.length)),
    widths: new Set(pieces.map((piece) => piece.width)),
  };
}
