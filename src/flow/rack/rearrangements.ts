import { overlaps, type Rectangle } from '../../base/geometry/rectangle.ts';
import type { BoardPattern, PlacedPiece } from '../choice/choice.ts';
import { blocks, extent } from '../stock/clear.ts';
import type { Face } from '../stock/defect.ts';
import type { Job } from '../stock/job.ts';
import { usable } from '../stock/usable.ts';

/** Where a piece is tried, and in which corner of the board the pieces are gathered. */
interface Ground {
  readonly job: Job;
  readonly pattern: BoardPattern;
  /** The usable wood, its corner moved to the origin. */
  readonly length: number;
  readonly width: number;
  /** Whether the piece may lie there, in ground coordinates. */
  readonly isFree: (piece: PlacedPiece, x: number, y: number) => boolean;
  /** Where defects end along and across, in ground coordinates: the next places worth trying. */
  readonly starts: { readonly x: readonly number[]; readonly y: readonly number[] };
  readonly onBoard: (piece: PlacedPiece, x: number, y: number) => PlacedPiece;
}

type Order = (a: Rectangle, b: Rectangle) => number;

const orders: readonly Order[] = [
  (a, b) => b.length - a.length || b.width - a.width,
  (a, b) => b.width - a.width || b.length - a.length,
  (a, b) => b.length * b.width - a.length * a.width,
];

/**
 * Other ways to lay the same pieces on the same board: gathered in each of its four corners, by sections or by strips,
 * in three orders of size. None need be better, and whether the saw can cut one is for the cuts to say.
 * @returns patterns whose pieces lie on usable wood, clear of what they must be clear of; none twice
 */
export function rearrangements(job: Job, pattern: BoardPattern): readonly BoardPattern[] {
  const found = new Map<string, BoardPattern>();
  for (const fromTip of [false, true]) {
    for (const fromFar of [false, true]) {
      const ground = groundOf(job, pattern, fromTip, fromFar);
      for (const order of orders) {
        for (const fill of [fillSections, fillStrips]) {
          const pieces = fill(ground, [...pattern.pieces].sort(order));
          if (pieces === null) continue;
          const key = pieces
            .map(({ part, copy, x, y }) => `${part} ${copy} ${x} ${y}`)
            .sort()
            .join('; ');
          if (!found.has(key)) found.set(key, { ...pattern, pieces });
        }
      }
    }
  }
  return [...found.values()];
}

function groundOf(job: Job, pattern: BoardPattern, fromTip: boolean, fromFar: boolean): Ground {
  const board = job.boards[pattern.board];
  if (board === undefined) throw new RangeError(`no board ${pattern.board}`);
  const wood = usable(board, job.shop);
  const place = (x: number, y: number, { length, width }: { length: number; width: number }): Rectangle => ({
    x: fromTip ? wood.x + wood.length - x - length : wood.x + x,
    y: fromFar ? wood.y + wood.width - y - width : wood.y + y,
    length,
    width,
  });
  const defects = board.defects.map((defect) => ({ defect, where: extent(defect, job.shop) }));
  const isClear = (piece: PlacedPiece, where: Rectangle, face: Face): boolean =>
    defects.every(
      ({ defect, where: taken }) => !overlaps(taken, where) || !blocks(job.parts[piece.part]!, defect, face),
    );
  return {
    job,
    pattern,
    length: wood.length,
    width: wood.width,
    isFree: (piece, x, y) => {
      if (x + piece.length > wood.length || y + piece.width > wood.width) return false;
      const where = place(x, y, piece);
      // No show face named means that either will do: then both must.
      const faces: readonly Face[] = piece.showFace === null ? ['A', 'B'] : [piece.showFace];
      return faces.every((face) => isClear(piece, where, face));
    },
    starts: {
      x: ascending(
        defects.map(({ where }) =>
          fromTip ? wood.x + wood.length - where.x : where.x + where.length - wood.x,
        ),
      ),
      y: ascending(
        defects.map(({ where }) =>
          fromFar ? wood.y + wood.width - where.y : where.y + where.width - wood.y,
        ),
      ),
    },
    onBoard: (piece, x, y) => ({ ...piece, ...place(x, y, piece) }),
  };
}

function ascending(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

/** The first place from `from` on where the test holds: there itself, or where a defect ends. */
function firstFrom(from: number, starts: readonly number[], holds: (at: number) => boolean): number | null {
  if (holds(from)) return from;
  return starts.find((start) => start > from && holds(start)) ?? null;
}

/**
 * Sections one behind the other, each as long as the piece that opens it; strips across the section, pieces along the
 * strip. null when a piece finds no place.
 */
function fillSections(ground: Ground, pieces: readonly PlacedPiece[]): PlacedPiece[] | null {
  const { crosscutKerf } = ground.job.shop;
  const placed: PlacedPiece[] = [];
  let left = [...pieces];
  let x = 0;
  while (left.length > 0) {
    const [opener] = left;
    if (opener === undefined) break;
    const start = firstFrom(x, ground.starts.x, (at) => rowFor(ground, opener, at, 0) !== null);
    if (start === null) return null;
    left = fillSection(ground, left, start, opener.length, placed);
    x = start + opener.length + crosscutKerf;
  }
  return placed;
}

/** Fills one section; returns the pieces that are left. */
function fillSection(
  ground: Ground,
  pieces: readonly PlacedPiece[],
  x: number,
  length: number,
  placed: PlacedPiece[],
): PlacedPiece[] {
  let left = [...pieces];
  let y = 0;
  for (const piece of pieces) {
    if (!left.includes(piece) || piece.length > length) continue;
    const row = rowFor(ground, piece, x, y);
    if (row === null) continue;
    left = fillStrip(
      ground,
      [piece, ...left.filter((other) => other !== piece)],
      { x, y: row, length },
      placed,
    );
    y = row + piece.width + ground.job.shop.ripKerf;
  }
  return left;
}

function rowFor(ground: Ground, piece: PlacedPiece, x: number, from: number): number | null {
  return firstFrom(from, ground.starts.y, (y) => ground.isFree(piece, x, y));
}

/** Lays pieces no wider than the first one behind it along a strip; returns those that are left. */
function fillStrip(
  ground: Ground,
  pieces: readonly PlacedPiece[],
  strip: { readonly x: number; readonly y: number; readonly length: number },
  placed: PlacedPiece[],
): PlacedPiece[] {
  const left: PlacedPiece[] = [];
  const width = pieces[0]?.width ?? 0;
  let x = strip.x;
  for (const piece of pieces) {
    const fits = piece.width <= width && x + piece.length <= strip.x + strip.length;
    const at = fits
      ? firstFrom(
          x,
          ground.starts.x,
          (start) => start + piece.length <= strip.x + strip.length && ground.isFree(piece, start, strip.y),
        )
      : null;
    if (at === null) left.push(piece);
    else {
      placed.push(ground.onBoard(piece, at, strip.y));
      x = at + piece.length + ground.job.shop.crosscutKerf;
    }
  }
  return left;
}

/** Strips side by side over the whole length, each as wide as the piece that opens it. */
function fillStrips(ground: Ground, pieces: readonly PlacedPiece[]): PlacedPiece[] | null {
  const placed: PlacedPiece[] = [];
  let left = [...pieces];
  let y = 0;
  while (left.length > 0) {
    const [opener] = left;
    if (opener === undefined) break;
    const anywhere = (row: number): boolean =>
      firstFrom(0, ground.starts.x, (x) => ground.isFree(opener, x, row)) !== null;
    const row = firstFrom(y, ground.starts.y, anywhere);
    if (row === null) return null;
    left = fillStrip(ground, left, { x: 0, y: row, length: ground.length }, placed);
    y = row + opener.width + ground.job.shop.ripKerf;
  }
  return placed;
}
