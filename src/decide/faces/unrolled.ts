import { overlaps, type Rectangle } from '../../base/geometry/rectangle.ts';
import type { LaidBoard, LaidPiece, Layout } from '../../flow/cuts/layout.ts';
import { liesAcross } from '../../flow/sheet/words/named.ts';
import { type Defect, type Face, liesOn } from '../../flow/stock/defect.ts';
import { welcome } from '../../flow/stock/clear.ts';
import type { Job } from '../../flow/stock/job.ts';
import type { Focus } from './focus.ts';

/** A defect in view, clipped to its piece. `u` from the left end of the wrap, `v` up from its lower edge, ticks. */
export interface Mark {
  readonly u: number;
  readonly v: number;
  readonly length: number;
  readonly width: number;
  readonly defect: Defect;
  /** Whether the maker welcomes it. */
  readonly isWelcome: boolean;
}

/** How a piece meets the one before it. */
export interface Joint {
  /** Degrees the wall turns there: the two bevels together. 0: no corner. */
  readonly turn: number;
  /** Whether both come from one strip, so that the grain runs on. */
  readonly grainRuns: boolean;
}

/** One piece as it will stand, seen from the room. */
export interface UnrolledPiece {
  readonly part: string;
  readonly board: string;
  readonly copy: number;
  readonly face: Face;
  /** Where it lies on its board, board coordinates. */
  readonly on: Rectangle;
  readonly u: number;
  readonly v: number;
  readonly length: number;
  readonly width: number;
  readonly marks: readonly Mark[];
  /** null for the first piece, and for the upper strips of a glue-up. */
  readonly joint: Joint | null;
  /** Whether a glue line parts it from the strip below. */
  readonly glueBelow: boolean;
}

/** The face as it will stand over the fire, the wrap unrolled round its corners: the cuts' kerfs are gone. */
export interface Unrolled {
  readonly pieces: readonly UnrolledPiece[];
  readonly length: number;
  readonly width: number;
}

interface Found {
  readonly laid: LaidBoard;
  readonly piece: LaidPiece;
}

/**
 * The lead's first copy and its run, walked from left to right, each piece with what shows in it.
 *
 *   face A, run along +x      face B, run along +x: the board is turned over about its length
 *   far edge  ┌──────────┐    near edge ┌──────────┐
 *   near edge └──────────┘    far edge  └──────────┘    butt end left in both
 *
 * Where a run lies the other way along the board, both pictures are turned end for end. A piece that lies across the
 * board is turned a quarter, butt end up on face A.
 */
export function unroll(job: Job, layout: Layout, focus: Focus): Unrolled {
  const found = focus.members.map((index) => piecesOf(layout, job.parts[index]!.name));
  const pieces: UnrolledPiece[] = [];
  let u = 0;
  let before: { readonly index: number; readonly found: Found } | null = null;
  for (const [order, strips] of found.entries()) {
    const index = focus.members[order]!;
    let v = 0;
    let longest = 0;
    for (const [at, one] of strips.entries()) {
      const isFirst = at === 0;
      const joint: Joint | null =
        before === null || !isFirst ? null : jointOf(job, before, { index, found: one });
      const placed = standing(job, index, one, { u, v, isBackward: runsBackward(found, one) });
      pieces.push({ ...placed, joint, glueBelow: !isFirst });
      v += placed.width;
      longest = Math.max(longest, placed.length);
    }
    u += longest;
    if (strips[0] !== undefined) before = { index, found: strips[0] };
  }
  const width = Math.max(0, ...pieces.map((piece) => piece.v + piece.width));
  return { pieces, length: u, width };
}

/** The strips of the first copy that is laid out, in order; one, as a rule. */
function piecesOf(layout: Layout, part: string): Found[] {
  const all = layout.boards.flatMap((laid) =>
    laid.pieces.filter((piece) => piece.part === part).map((piece) => ({ laid, piece })),
  );
  const first = Math.min(...all.map(({ piece }) => piece.copy));
  return all
    .filter(({ piece }) => piece.copy === first)
    .sort((a, b) => (a.piece.strip?.index ?? 0) - (b.piece.strip?.index ?? 0));
}

function runsBackward(found: readonly (readonly Found[])[], { piece }: Found): boolean {
  if (piece.run === undefined) return false;
  const same = found
    .flat()
    .filter((other) => other.piece.run?.run === piece.run?.run)
    .sort((a, b) => (a.piece.run?.order ?? 0) - (b.piece.run?.order ?? 0));
  const [first, second] = same;
  return first !== undefined && second !== undefined && second.piece.x < first.piece.x;
}

function jointOf(
  job: Job,
  before: { readonly index: number; readonly found: Found },
  here: { readonly index: number; readonly found: Found },
): Joint {
  const turn = Math.abs(job.parts[before.index]!.rightEnd) + Math.abs(job.parts[here.index]!.leftEnd);
  const run = here.found.piece.run?.run;
  return { turn, grainRuns: run !== undefined && before.found.piece.run?.run === run };
}

function standing(
  job: Job,
  index: number,
  { laid, piece }: Found,
  at: { readonly u: number; readonly v: number; readonly isBackward: boolean },
): Omit<UnrolledPiece, 'joint' | 'glueBelow'> {
  const part = job.parts[index]!;
  const face = piece.showFace ?? 'A';
  const isAcross = liesAcross(piece, part);
  const flipU = at.isBackward;
  const flipV = (face === 'B') !== at.isBackward;
  const board = job.boards.find(({ name }) => name === laid.board);
  const marks = (board?.defects ?? []).flatMap((defect) => {
    const seen = liesOn(defect, face) && overlaps(defect, piece) ? clipped(defect, piece) : null;
    if (seen === null) return [];
    // From the left end and from the low edge of the piece, still as the board lies with face A up.
    const x = seen.x - piece.x;
    const y = seen.y - piece.y;
    const own = isAcross
      ? { u: y, v: piece.length - x - seen.length, length: seen.width, width: seen.length }
      : { u: x, v: y, length: seen.length, width: seen.width };
    const size = isAcross ? { length: piece.width, width: piece.length } : piece;
    return [
      {
        u: at.u + (flipU ? size.length - own.u - own.length : own.u),
        v: at.v + (flipV ? size.width - own.v - own.width : own.v),
        length: own.length,
        width: own.width,
        defect,
        isWelcome: welcome(part, defect),
      },
    ];
  });
  const { x, y, length, width } = piece;
  return {
    part: part.name,
    board: laid.board,
    copy: laid.copy,
    face,
    on: { x, y, length, width },
    u: at.u,
    v: at.v,
    length: isAcross ? width : length,
    width: isAcross ? length : width,
    marks,
  };
}

function clipped(a: Rectangle, b: Rectangle): Rectangle {
  const x = Math.max(a.x, b.x);
  const y = Math.max(a.y, b.y);
  return {
    x,
    y,
    length: Math.min(a.x + a.length, b.x + b.length) - x,
    width: Math.min(a.y + a.width, b.y + b.width) - y,
  };
}
