import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { unreachable } from '../../base/result/unreachable.ts';
import type { Defect, Face } from '../stock/defect.ts';

/**
 * The four ways a piece can lie with its grain still along x:
 *
 *     as cut        butt ▸ tip, near edge below, face A up
 *     end for end   half a turn on the bench: the other end is the butt end, the far edge the near edge, face A up
 *     over          rolled about its long axis: face B up, the far edge becomes the near edge, the butt end stays
 *     both          rolled over and turned: face B up, the other end is the butt end, the near edge stays
 */
export const turns = ['as cut', 'end for end', 'over', 'both'] as const;
export type Turn = (typeof turns)[number];

/** Length and width of the thing that is turned, ticks. */
export interface Extent {
  readonly length: number;
  readonly width: number;
}

/** Whether face B has become face A. */
export function swapsFaces(turn: Turn): boolean {
  return turn === 'over' || turn === 'both';
}

/** Whether the tip has become the butt end. */
export function swapsEnds(turn: Turn): boolean {
  return turn === 'end for end' || turn === 'both';
}

/** Whether the far edge has become the near edge. Rolling over and a half turn each swap the edges; both together do not. */
export function swapsEdges(turn: Turn): boolean {
  return turn === 'end for end' || turn === 'over';
}

/**
 * Where a rectangle on a piece lies once the piece is turned.
 * @param piece the piece's own extent; a turn changes neither
 * @returns same size, new corner, in the coordinates of the piece as it lies now. Every turn undoes itself.
 * @example turnRectangle({ x: 1, y: 0, length: 2, width: 3 }, { length: 10, width: 5 }, 'end for end').x // 7
 */
export function turnRectangle(rectangle: Rectangle, piece: Extent, turn: Turn): Rectangle {
  return {
    x: swapsEnds(turn) ? piece.length - rectangle.x - rectangle.length : rectangle.x,
    y: swapsEdges(turn) ? piece.width - rectangle.y - rectangle.width : rectangle.y,
    length: rectangle.length,
    width: rectangle.width,
  };
}

/** The face's name once the piece is turned. */
export function turnFace(face: Face | 'through', turn: Turn): Face | 'through' {
  if (face === 'through' || !swapsFaces(turn)) return face;
  return face === 'A' ? 'B' : 'A';
}

/** A defect in the coordinates of the turned piece: still as seen on (the new) face A, whichever face it is on. */
export function turnDefect(defect: Defect, piece: Extent, turn: Turn): Defect {
  return { ...turnRectangle(defect, piece, turn), kind: defect.kind, face: turnFace(defect.face, turn) };
}

/** The one turn that does what two do one after the other; the order does not matter. */
export function compose(first: Turn, second: Turn): Turn {
  switch (second) {
    case 'as cut':
      return first;
    case 'end for end':
      return swapsEnds(first)
        ? swapsFaces(first)
          ? 'over'
          : 'as cut'
        : swapsFaces(first)
          ? 'both'
          : 'end for end';
    case 'over':
      return swapsFaces(first)
        ? swapsEnds(first)
          ? 'end for end'
          : 'as cut'
        : swapsEnds(first)
          ? 'both'
          : 'over';
    case 'both':
      return compose(compose(first, 'over'), 'end for end');
    default:
      return unreachable(second);
  }
}
