import { failure, success, type Result } from '../../base/result/result.ts';
import { ticks, type Tick } from '../../base/units/tick.ts';
import { offcutThickness } from '../cuts/offcut-thickness.ts';
import type { LaidBoard, Layout } from '../cuts/layout.ts';
import type { Board } from '../stock/board.ts';
import type { BookingDraft } from './booking-draft.ts';
import type { Deed, Made } from './entry.ts';
import { layoutFingerprint } from './fingerprint.ts';
import type { Rack } from './fold.ts';
import { identifier } from './identifier.ts';
import { offcutPiece } from './offcut-piece.ts';
import { asBoard, asPiece } from './piece.ts';
import type { BookingProblem } from './problem.ts';

/** What is needed to book a layout that has been cut. */
export interface CutLayout {
  /** The job's own boards, as its files name them, used up or not. */
  readonly boards: readonly Board[];
  /** Thickness of each part by name: what its board was planed to, and for the history of what was needed. */
  readonly thickness: ReadonlyMap<string, Tick>;
  /** What the shop keeps clear round knots. */
  readonly knotMargin: Tick;
  readonly layout: Layout;
  /** The job as the journal calls it. */
  readonly key: string;
  readonly time: string;
}

/** A layout's booking, and which offcuts had to be named anew, since their name was given meanwhile. */
export interface LayoutBooking {
  readonly draft: BookingDraft;
  readonly renamed: readonly { readonly from: string; readonly to: string }[];
}

/** More does not go on a piece of wood; the names we give have a few characters. */
const longestName = 60;

/**
 * Books a layout that has been cut and has passed the check: each of its boards and rack pieces is taken, each of its
 * offcuts put. Refused when the same layout stands booked, or when a board or piece is not there any more.
 * @returns all problems found
 */
export function bookLayout(rack: Rack, cut: CutLayout): Result<LayoutBooking, BookingProblem> {
  const { layout, key, time } = cut;
  const fingerprint = layoutFingerprint(layout);
  const before = rack.bookings.find((booking) => booking.layout === fingerprint && booking.job === key);
  if (before !== undefined)
    return failure([{ kind: 'booked before', booking: before.number, time: before.time }]);
  const found = findStock(rack, cut);
  const long = layout.boards.flatMap(({ offcuts }) => offcuts.filter(({ id }) => id.length > longestName));
  const problems = [
    ...found.problems,
    ...long.map(({ id }) => ({ kind: 'name too long', name: id }) as const),
  ];
  if (problems.length > 0) return failure(problems);

  const given = new Set([...rack.pieces.keys(), ...cut.boards.map(({ name }) => name)]);
  const renamed: { from: string; to: string }[] = [];
  const nameFor = (id: string): string => {
    const name = given.has(id) || id === '' ? identifier(`${key}\n${fingerprint}\n${id}`, given) : id;
    given.add(name);
    if (name !== id) renamed.push({ from: id, to: name });
    return name;
  };
  const deeds = found.stock.flatMap(({ laid, board }): Deed[] => [
    { action: 'take', from: board.origin, name: board.name, piece: asPiece(board), made: madeOf(laid, cut) },
    ...laid.offcuts.map((offcut): Deed => ({
      action: 'put',
      piece: offcutPiece(nameFor(offcut.id), offcut, board, {
        thickness: offcutThickness(laid, offcut, cut.thickness, board.dressedThickness),
        knotMargin: cut.knotMargin,
      }),
    })),
  ]);
  const occasion = { time, job: key, layout: fingerprint };
  return success({ draft: { occasion, deeds: deeds.map((deed) => ({ deed, note: '' })) }, renamed });
}

interface FoundStock {
  readonly stock: readonly { readonly laid: LaidBoard; readonly board: Board }[];
  readonly problems: readonly BookingProblem[];
}

/** The board behind each laid board: one of the job's with a copy left, else a piece that is on the rack. */
function findStock(rack: Rack, { boards, layout, key }: CutLayout): FoundStock {
  const left = new Map(boards.map((board) => [board.name, board.quantity]));
  for (const { job, board } of rack.used) {
    const count = left.get(board);
    if (job === key && count !== undefined) left.set(board, count - 1);
  }
  const own = new Map(boards.map((board) => [board.name, board]));
  const problems: BookingProblem[] = [];
  const stock: { laid: LaidBoard; board: Board }[] = [];
  const taken = new Set<string>();
  for (const laid of layout.boards) {
    const name = laid.board;
    const ownBoard = own.get(name);
    const copies = left.get(name) ?? 0;
    if (ownBoard !== undefined && copies > 0) {
      left.set(name, copies - 1);
      stock.push({ laid, board: ownBoard });
      continue;
    }
    if (ownBoard !== undefined) {
      problems.push({ kind: 'board used up', board: name });
      continue;
    }
    const piece = pieceFor(name, rack, taken);
    if ('kind' in piece) problems.push(piece);
    else stock.push({ laid, board: piece });
  }
  return { stock, problems };
}

/** A piece of the rack as the board it was laid out as; a layout can use it once. */
function pieceFor(name: string, rack: Rack, taken: Set<string>): Board | BookingProblem {
  const held = rack.pieces.get(name);
  if (held === undefined) return { kind: 'board unknown', board: name };
  if (held.where.kind !== 'rack')
    return { kind: 'piece not on the rack', name, where: held.where.kind, near: null };
  if (taken.has(name)) return { kind: 'board used up', board: name };
  taken.add(name);
  return asBoard(held.piece, held.note);
}

/** What was cut from the board, equal sizes counted together, in order of appearance. */
function madeOf({ pieces }: LaidBoard, { thickness }: CutLayout): readonly Made[] {
  const counted = new Map<string, Made>();
  for (const { part, length, width } of pieces) {
    const thick = thickness.get(part) ?? ticks(0);
    const key = `${length} ${width} ${thick}`;
    const count = (counted.get(key)?.count ?? 0) + 1;
    counted.set(key, { count, length: ticks(length), width: ticks(width), thickness: thick });
  }
  return [...counted.values()];
}
