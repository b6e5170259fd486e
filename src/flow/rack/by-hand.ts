import { failure, success, type Result } from '../../base/result/result.ts';
import type { Tick } from '../../base/units/tick.ts';
import type { Defect } from '../stock/defect.ts';
import type { BookingDraft } from './booking-draft.ts';
import { carryDefects } from './carry.ts';
import type { Deed } from './entry.ts';
import { parted } from './knots-beside.ts';
import { findPiece } from './find-piece.ts';
import type { Held, Rack } from './fold.ts';
import { turnPiece, type RackPiece } from './piece.ts';
import type { BookingProblem } from './problem.ts';
import type { Turn } from './turn.ts';
import { pieceCells } from './write-entry.ts';

/** Who does what when, for a booking by hand. */
export interface Hand {
  readonly time: string;
  /** The job it is done for; may be empty. */
  readonly job: string;
  readonly note: string;
}

/** Takes pieces off the rack for something that is no layout. All of them or none. */
export function takePieces(
  rack: Rack,
  names: readonly string[],
  hand: Hand,
): Result<BookingDraft, BookingProblem> {
  return eachPiece(rack, names, hand, ({ piece }) => ({
    action: 'take',
    from: 'rack',
    name: piece.name,
    piece,
    made: [],
  }));
}

/** Throws pieces out. All of them or none. */
export function discardPieces(
  rack: Rack,
  names: readonly string[],
  hand: Hand,
): Result<BookingDraft, BookingProblem> {
  return eachPiece(rack, names, hand, ({ piece }) => ({ action: 'discard', name: piece.name, piece }));
}

function eachPiece(
  rack: Rack,
  names: readonly string[],
  { time, job, note }: Hand,
  deedOf: (held: Held) => Deed,
): Result<BookingDraft, BookingProblem> {
  const found = [...new Set(names)].map((name) => findPiece(rack, name));
  const problems = found.filter((one) => 'kind' in one);
  if (problems.length > 0) return failure(problems);
  const held = new Set(found.filter((one) => 'piece' in one));
  const deeds = [...held].map((one) => ({ deed: deedOf(one), note }));
  return success({ occasion: { time, job, layout: '' }, deeds });
}

/** What is set right about a piece; what is absent stays. */
export interface Correction {
  /** How the piece is to lie from now on against how it lay; happens first. */
  readonly turn?: Turn;
  /** Measured from the butt end and the near edge: what is cut off is cut off at the other. */
  readonly length?: Tick;
  readonly width?: Tick;
  readonly thickness?: Tick;
  readonly species?: string;
  readonly tone?: string;
  readonly lookA?: number;
  readonly lookB?: number;
  /** Defects found since, in the piece's coordinates after the turn. */
  readonly found?: readonly Defect[];
}

/**
 * Corrects a piece on the rack: measured again, turned, looked at again. Defects that the new size leaves out go, but for
 * knots, whose grain may still reach the piece.
 * Its cost stays what the ledger says.
 */
export function correctPiece(
  rack: Rack,
  name: string,
  correction: Correction,
  hand: Hand,
): Result<BookingDraft, BookingProblem> {
  const held = findPiece(rack, name);
  if ('kind' in held) return failure([held]);
  const piece = corrected(held.piece, correction);
  const note = hand.note === '' ? held.note : hand.note;
  if (samePiece(piece, held.piece) && note === held.note)
    return failure([{ kind: 'piece as it is', name: piece.name }]);
  const occasion = { time: hand.time, job: held.job, layout: '' };
  return success({ occasion, deeds: [{ deed: { action: 'correct', piece }, note }] });
}

/** Whether the journal would say the same of both. */
function samePiece(a: RackPiece, b: RackPiece): boolean {
  const cells = pieceCells(b, 'in').map(([, cell]) => cell);
  return pieceCells(a, 'in').every(([, cell], index) => cell === cells[index]);
}

function corrected(before: RackPiece, { turn, found = [], thickness, ...rest }: Correction): RackPiece {
  const turned = turnPiece(before, turn ?? 'as cut');
  const { length = turned.length, width = turned.width } = rest;
  const whole = { x: 0, y: 0, length, width };
  const all = [...turned.defects, ...found, ...turned.beside];
  return {
    ...turned,
    ...rest,
    dressedThickness: thickness ?? turned.dressedThickness,
    defects: carryDefects(all, whole, 'as cut'),
    beside: parted(all, whole).beside,
  };
}

/** Reverses the last booking that stands: a booking of its own, which cannot itself be undone. */
export function undoLast(rack: Rack, { time, note }: Hand): Result<BookingDraft, BookingProblem> {
  const last = rack.bookings.at(-1);
  if (last === undefined) return failure([{ kind: 'nothing to undo' }]);
  const occasion = { time, job: last.job, layout: '' };
  return success({ occasion, deeds: [{ deed: { action: 'undo', undoes: last.number }, note }] });
}
