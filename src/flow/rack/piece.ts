import type { Tick } from '../../base/units/tick.ts';
import { boardFeet } from '../../trade/board-feet.ts';
import type { Board } from '../stock/board.ts';
import type { Defect } from '../stock/defect.ts';
import { carryDefects } from './carry.ts';
import { parted } from './knots-beside.ts';
import { compose, swapsFaces, turnDefect, type Extent, type Turn } from './turn.ts';

/** Where an offcut lay on the board it was cut from. */
export interface Parent {
  /** The board's name in its job, or the identifier of a rack piece. */
  readonly name: string;
  /** The offcut's corner on the parent, in the parent's coordinates. */
  readonly x: Tick;
  readonly y: Tick;
  /** How the offcut lies now against how it lay on the parent. */
  readonly turn: Turn;
}

/** A piece of wood as the journal describes it: an offcut, or a whole board when a job takes one. */
export interface RackPiece extends Extent {
  /** What is written on the wood. */
  readonly name: string;
  readonly length: Tick;
  readonly width: Tick;
  readonly dressedThickness: Tick;
  /** As the yard names it: `4/4`. */
  readonly nominalThickness: string;
  /** For board feet. */
  readonly nominalInches: number;
  readonly species: string;
  readonly grade: string;
  readonly tone: string;
  readonly lookA: number;
  readonly lookB: number;
  /** Its share of what the parent cost, in money: what the next job pays for it. */
  readonly cost: number;
  /** In the piece's own coordinates, as it lies now. */
  readonly defects: readonly Defect[];
  /** Knots that lay off it on its parent, so near that the wood round them is its own: out of its outline. */
  readonly beside: readonly Defect[];
  /** null for a whole board of a job. */
  readonly parent: Parent | null;
}

/** The piece turned on the rack: new butt end, near edge or face A, with defects, looks and parent following. */
export function turnPiece(piece: RackPiece, turn: Turn): RackPiece {
  const whole = { x: 0, y: 0, length: piece.length, width: piece.width };
  return {
    ...piece,
    lookA: swapsFaces(turn) ? piece.lookB : piece.lookA,
    lookB: swapsFaces(turn) ? piece.lookA : piece.lookB,
    defects: carryDefects(piece.defects, whole, turn),
    beside: piece.beside.map((knot) => turnDefect(knot, piece, turn)),
    parent: piece.parent === null ? null : { ...piece.parent, turn: compose(piece.parent.turn, turn) },
  };
}

/**
 * A rack piece as stock of the next job. Its edges and ends were sawn when it was cut off, so its surface is S4S
 * (no edge trim) and `usable` takes no end trim of it.
 */
export function asBoard(piece: RackPiece, note: string): Board {
  return {
    name: piece.name,
    quantity: 1,
    length: piece.length,
    width: piece.width,
    nominalThickness: piece.nominalThickness,
    nominalInches: piece.nominalInches,
    // No yard tallies an offcut: it counts for what it holds.
    yardFeet: boardFeet(piece.length, piece.width, piece.nominalInches),
    dressedThickness: piece.dressedThickness,
    surface: 'S4S',
    species: piece.species,
    grade: piece.grade,
    cost: piece.cost,
    lookA: piece.lookA,
    lookB: piece.lookB,
    tone: piece.tone,
    note,
    defects: [...piece.defects, ...piece.beside],
    origin: 'rack',
  };
}

/** A board of a job as the journal describes it: one copy, no parent. */
export function asPiece(board: Board): RackPiece {
  const { on, beside } = parted(board.defects, board);
  return {
    name: board.name,
    length: board.length,
    width: board.width,
    dressedThickness: board.dressedThickness,
    nominalThickness: board.nominalThickness,
    nominalInches: board.nominalInches,
    species: board.species,
    grade: board.grade,
    tone: board.tone,
    lookA: board.lookA,
    lookB: board.lookB,
    cost: board.cost,
    defects: on,
    beside,
    parent: null,
  };
}
