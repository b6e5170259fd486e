import { onRack, type Held, type Rack } from './fold.ts';
import type { BookingProblem } from './problem.ts';

/**
 * The piece of that name on the rack. Identifiers may be typed in small letters.
 * @returns the piece, or why it is not there, with the name that was likely meant
 */
export function findPiece(rack: Rack, typed: string): Held | BookingProblem {
  const held = rack.pieces.get(typed) ?? rack.pieces.get(typed.trim().toUpperCase());
  if (held?.where.kind === 'rack') return held;
  const where = held === undefined ? 'unknown' : held.where.kind === 'taken' ? 'taken' : 'discarded';
  return { kind: 'piece not on the rack', name: typed, where, near: nearName(rack, typed) };
}

/** A name on the rack that differs from the typed one by one character or by two neighbours swapped. */
function nearName(rack: Rack, typed: string): string | null {
  const wanted = typed.trim().toUpperCase();
  const near = onRack(rack).find(({ piece }) => piece.name !== typed && differsByASlip(piece.name, wanted));
  return near?.piece.name ?? null;
}

function differsByASlip(a: string, b: string): boolean {
  if (a.length !== b.length) return false;
  const differing = [...a].map((_, index) => index).filter((index) => a[index] !== b[index]);
  const [first = 0, second = 0] = differing;
  if (differing.length <= 1) return true;
  return differing.length === 2 && second === first + 1 && a[first] === b[second] && a[second] === b[first];
}
