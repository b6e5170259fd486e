import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Rectangle } from '../../src/base/geometry/rectangle.ts';
import { ticks } from '../../src/base/units/tick.ts';
import { bookingText, type BookingDraft } from '../../src/flow/rack/booking-draft.ts';
import { bookLayout } from '../../src/flow/rack/book-layout.ts';
import { correctPiece, discardPieces, takePieces, undoLast } from '../../src/flow/rack/by-hand.ts';
import { foldJournal, onRack, type Rack } from '../../src/flow/rack/fold.ts';
import { readJournal } from '../../src/flow/rack/read-journal.ts';
import { swapsEdges, swapsEnds, turns } from '../../src/flow/rack/turn.ts';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import { plainBoard } from '../laws/random-board.ts';
import { seeded, type Seeded } from '../laws/seeded.ts';
import { bareLayout } from './bare-layout.ts';

const hand = { time: 'T', job: '', note: '' };

/** Two jobs of small boards: every square tick can be coloured. */
const jobs: ReadonlyMap<string, readonly Board[]> = new Map(
  ['one', 'two'].map((key) => [
    key,
    [1, 2, 3].map((index) =>
      plainBoard({ name: `${key}-B${index}`, length: 12, width: 6, quantity: index, cost: 6 }),
    ),
  ]),
);

/** A journal kept as text, as it is kept on disk. */
interface Diary {
  text: string;
}

function load(diary: Diary): Rack {
  const journal = readJournal(diary.text);
  if (!journal.ok) throw new Error('no journal');
  expect(journal.value.notices).toEqual([]);
  const rack = foldJournal(journal.value.entries);
  expect(rack.notices).toEqual([]);
  return rack;
}

function append(diary: Diary, draft: BookingDraft): void {
  const journal = readJournal(diary.text);
  if (!journal.ok) throw new Error('no journal');
  diary.text += bookingText(journal.value, draft, 'mm').text;
}

/** A layout that cuts the given board's middle third away and keeps what is left and right of it, or above and below. */
function randomLayout(rack: Rack, key: string, random: Seeded): Layout | null {
  const own = (jobs.get(key) ?? []).filter(({ name, quantity }) => {
    return rack.used.filter((used) => used.board === name).length < quantity;
  });
  const rackBoards = onRack(rack).map(({ piece }) => ({
    name: piece.name,
    length: piece.length,
    width: piece.width,
  }));
  const boards = [...own, ...rackBoards].filter(() => random.chance(0.4)).slice(0, 3);
  if (boards.length === 0) return null;
  return bareLayout(
    boards.map(({ name, length, width }, index) => {
      const along = random.chance(0.5) && length >= 3;
      const first = random.whole(0, Math.floor((along ? length : width) / 3));
      const second = random.whole(0, Math.floor((along ? length : width) / 3));
      const offcuts: Rectangle[] = along
        ? [
            { x: 0, y: 0, length: first, width },
            { x: length - second, y: 0, length: second, width },
          ]
        : [
            { x: 0, y: 0, length, width: first },
            { x: 0, y: width - second, length, width: second },
          ];
      const kept = offcuts.filter((offcut) => offcut.length > 0 && offcut.width > 0);
      return {
        board: name,
        copy: 1,
        length,
        width,
        offcuts: kept.map((offcut, at) => ({ ...offcut, id: `${index}.${at}` })),
      };
    }),
  );
}

function nextBooking(rack: Rack, random: Seeded): BookingDraft | null {
  const kind = random.whole(0, 5);
  const pieces = onRack(rack);
  const piece = pieces.length === 0 ? null : random.pick(pieces).piece;
  if (kind === 0) {
    const undo = undoLast(rack, hand);
    return undo.ok ? undo.value : null;
  }
  if (kind === 1 && piece !== null) {
    const draft = discardPieces(rack, [piece.name], hand);
    return draft.ok ? draft.value : null;
  }
  if (kind === 2 && piece !== null) {
    const draft = takePieces(rack, [piece.name], { ...hand, job: 'shelf' });
    return draft.ok ? draft.value : null;
  }
  if (kind === 3 && piece !== null) {
    const draft = correctPiece(rack, piece.name, { turn: random.pick(turns) }, hand);
    return draft.ok ? draft.value : null;
  }
  const key = random.pick([...jobs.keys()]);
  const layout = randomLayout(rack, key, random);
  if (layout === null) return null;
  const booked = bookLayout(rack, {
    boards: jobs.get(key) ?? [],
    thickness: new Map(),
    knotMargin: ticks(0),
    layout,
    key,
    time: 'T',
  });
  return booked.ok ? booked.value.draft : null;
}

/** The square ticks of each root board copy, each with the one place it is in. */
function places(rack: Rack): Map<string, string> {
  const where = new Map<string, string>();
  const copies = new Map<string, number>();
  const copyOfPut = new Map<string, string>();
  const claim = (square: string, place: string): void => {
    where.set(square, place);
  };
  // Each use of a board copy colours the whole copy "cut up"; the offcuts put by that same booking then take theirs.
  for (const { board, piece, booking } of rack.used) {
    const copy = (copies.get(board) ?? 0) + 1;
    copies.set(board, copy);
    copyOfPut.set(`${booking ?? ''} ${board}`, `${board}#${copy}`);
    for (let x = 0; x < (piece?.length ?? 0); x += 1)
      for (let y = 0; y < (piece?.width ?? 0); y += 1)
        claim(`${board}#${copy} ${x} ${y}`, `cut up in ${booking ?? ''}`);
  }
  const claimed = new Map<string, string>();
  for (const { piece, where: place } of rack.pieces.values()) {
    for (const square of squaresOf(rack, piece.name, copyOfPut)) {
      // Parents come before their offcuts, so an offcut may only take what its parent, cut up, had.
      const before = claimed.get(square);
      if (before !== undefined) expect(before).toBe(parentPlace(rack, piece.name));
      expect(where.has(square)).toBe(true);
      const name = place.kind === 'rack' ? `rack ${piece.name}` : `${place.kind} ${piece.name}`;
      claimed.set(square, name);
      claim(square, name);
    }
  }
  return where;
}

function parentPlace(rack: Rack, name: string): string {
  const parent = rack.pieces.get(name)?.piece.parent?.name ?? '';
  return `taken ${parent}`;
}

/** Squares of the root board that a piece is made of, following parents and turns by hand. */
function squaresOf(rack: Rack, name: string, copies: ReadonlyMap<string, string>): string[] {
  const held = rack.pieces.get(name);
  if (held === undefined) throw new Error(`no piece ${name}`);
  const squares: [number, number][] = [];
  for (let x = 0; x < held.piece.length; x += 1)
    for (let y = 0; y < held.piece.width; y += 1) squares.push([x, y]);
  let here = held;
  let current = squares;
  for (;;) {
    const { parent, length, width } = here.piece;
    if (parent === null) throw new Error('a piece without a parent');
    current = current.map(([x, y]) => [
      parent.x + (swapsEnds(parent.turn) ? length - 1 - x : x),
      parent.y + (swapsEdges(parent.turn) ? width - 1 - y : y),
    ]);
    const above = rack.pieces.get(parent.name);
    if (above === undefined) {
      const root = copies.get(`${here.booking ?? ''} ${parent.name}`);
      if (root === undefined) throw new Error(`no board ${parent.name}`);
      return current.map(([x, y]) => `${root} ${x} ${y}`);
    }
    here = above;
  }
}

describe('conservation over random histories', () => {
  it('every square tick of every board is in exactly one place', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const random = seeded(seed);
        const diary: Diary = { text: '' };
        let offcuts = 0;
        for (let step = 0; step < 14; step += 1) {
          const draft = nextBooking(load(diary), random);
          if (draft !== null) append(diary, draft);
          const rack = load(diary);
          const where = places(rack);
          const used = rack.used.reduce(
            (sum, { piece }) => sum + (piece === null ? 0 : piece.length * piece.width),
            0,
          );
          expect(where.size).toBe(used);
          // No two pieces on the rack claim one square: together they are as large as the squares they hold.
          const held = onRack(rack).reduce((sum, { piece }) => sum + piece.length * piece.width, 0);
          expect([...where.values()].filter((place) => place.startsWith('rack ')).length).toBe(held);
          // Money: what boards cost is never less than what lies on the rack as their shares.
          const onTheRack = onRack(rack).reduce((sum, { piece }) => sum + piece.cost, 0);
          expect(onTheRack).toBeLessThanOrEqual(6 * rack.used.length + 0.01);
          offcuts = Math.max(offcuts, onRack(rack).length);
        }
        fc.pre(offcuts > 0);
      }),
      { numRuns: 25 },
    );
  });

  it('undo of everything gives back the first state, step by step', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const random = seeded(seed);
        const diary: Diary = { text: '' };
        const states = [state(load(diary))];
        for (let step = 0; step < 10; step += 1) {
          const draft = nextBooking(load(diary), random);
          if (draft === null) continue;
          append(diary, draft);
          if (draft.deeds[0]?.deed.action === 'undo') states.pop();
          else states.push(state(load(diary)));
        }
        expect(state(load(diary))).toEqual(states.at(-1));
        while (states.length > 1) {
          states.pop();
          const undo = undoLast(load(diary), hand);
          if (!undo.ok) throw new Error('nothing to undo');
          append(diary, undo.value);
          expect(state(load(diary))).toEqual(states.at(-1));
        }
        expect(undoLast(load(diary), hand)).toEqual({ ok: false, problems: [{ kind: 'nothing to undo' }] });
      }),
      { numRuns: 20 },
    );
  });
});

/** A rack as a value that can be compared. */
function state(rack: Rack): unknown {
  return { ...rack, pieces: [...rack.pieces.entries()] };
}
