import { describe, expect, it } from 'vitest';
import { inches, ticks } from '../../src/base/units/tick.ts';
import { bookingText } from '../../src/flow/rack/booking-draft.ts';
import { bookLayout, type CutLayout } from '../../src/flow/rack/book-layout.ts';
import { correctPiece, discardPieces, takePieces, undoLast } from '../../src/flow/rack/by-hand.ts';
import { layoutFingerprint } from '../../src/flow/rack/fingerprint.ts';
import { foldJournal, onRack, type Rack } from '../../src/flow/rack/fold.ts';
import { isIdentifier } from '../../src/flow/rack/identifier.ts';
import { nameOffcuts } from '../../src/flow/rack/name-offcuts.ts';
import { asBoard } from '../../src/flow/rack/piece.ts';
import { emptyJournal, readJournal } from '../../src/flow/rack/read-journal.ts';
import { stockedJob } from '../../src/flow/rack/stock-for-job.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Defect } from '../../src/flow/stock/defect.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { bareLayout } from './bare-layout.ts';

const hand = { time: 'T', job: '', note: '' };

// 96 × 8 in at 48: an offcut of 24 × 8 in is a quarter of it, 12.
const board = plainBoard({
  name: 'B1',
  length: inches(96),
  width: inches(8),
  quantity: 2,
  cost: 48,
  species: 'walnut',
  tone: 'dark',
  lookA: 8,
  lookB: 3,
  note: 'curl',
  defects: [
    { kind: 'sound knot', face: 'A', x: inches(80), y: inches(2), length: inches(2), width: inches(2) },
    { kind: 'check', face: 'through', x: inches(66), y: inches(7), length: inches(10), width: inches(1) },
  ],
});
const layout = bareLayout([
  {
    board: 'B1',
    copy: 1,
    length: inches(96),
    width: inches(8),
    pieces: [1, 2].map((copy) => ({
      part: 'front',
      copy,
      x: (copy - 1) * inches(36),
      y: 0,
      length: inches(35),
      width: inches(8),
      showFace: 'A',
    })),
    offcuts: [{ id: 'C234X', x: inches(72), y: 0, length: inches(24), width: inches(8) }],
  },
]);
const cut: CutLayout = {
  boards: [board],
  thickness: new Map([['front', inches(3 / 4)]]),
  layout,
  knotMargin: ticks(0),
  key: 'hearth',
  time: 'T',
};
const noRack = foldJournal([]);

/** The rack after the drafts that each step makes of the rack before it. */
function after(...steps: readonly ((rack: Rack) => ReturnType<typeof takePieces>)[]): Rack {
  let text = '';
  let rack = noRack;
  for (const step of steps) {
    const draft = step(rack);
    if (!draft.ok) throw new Error(draft.problems[0]?.kind);
    const journal = text === '' ? emptyJournal : read(text);
    text += bookingText(journal, draft.value, 'in').text;
    rack = foldJournal(read(text).entries);
  }
  return rack;
}

function read(text: string): typeof emptyJournal {
  const journal = readJournal(text);
  if (!journal.ok) throw new Error('no journal');
  return journal.value;
}

function book(given: Partial<CutLayout> = {}): (rack: Rack) => ReturnType<typeof takePieces> {
  return (rack) => {
    const booked = bookLayout(rack, { ...cut, ...given });
    return booked.ok ? { ok: true, value: booked.value.draft } : booked;
  };
}

describe('booking a layout', () => {
  it('takes the board, puts the offcut with its defects, its share of the cost and all that the parent was', () => {
    const rack = after(book());
    expect(rack.used).toMatchObject([{ job: 'hearth', board: 'B1', booking: 1 }]);
    expect(onRack(rack).map(({ piece }) => piece)).toEqual([
      {
        name: 'C234X',
        length: inches(24),
        width: inches(8),
        // Planed to its 3/4 in parts.
        dressedThickness: inches(3 / 4),
        nominalThickness: '4/4',
        nominalInches: 1,
        species: 'walnut',
        grade: '',
        tone: 'dark',
        lookA: 8,
        lookB: 3,
        cost: 12,
        // 80 − 72 = 8; the check reaches 4 in past the cut.
        defects: [
          { kind: 'sound knot', face: 'A', x: inches(8), y: inches(2), length: inches(2), width: inches(2) },
          { kind: 'check', face: 'through', x: 0, y: inches(7), length: inches(4), width: inches(1) },
        ],
        beside: [],
        parent: { name: 'B1', x: inches(72), y: 0, turn: 'as cut' },
      },
    ]);
    expect(rack.made).toEqual([{ count: 2, length: inches(35), width: inches(8), thickness: inches(3 / 4) }]);
  });

  it('hands on a knot that lies off the offcut, as far as the wood round it does', () => {
    const knots: Defect[] = [
      { kind: 'sound knot', face: 'A', x: inches(71), y: inches(3), length: inches(3 / 4), width: inches(1) },
      { kind: 'loose knot', face: 'B', x: inches(70), y: inches(3), length: inches(1), width: inches(1) },
      { kind: 'hole', face: 'A', x: inches(71), y: inches(5), length: inches(3 / 4), width: inches(1) },
    ];
    const flawed = { ...cut, boards: [{ ...board, defects: knots }], knotMargin: inches(1 / 2) };
    const rack = after((before) => {
      const made = bookLayout(before, flawed);
      return made.ok ? { ok: true, value: made.value.draft } : made;
    });
    const [{ piece } = { piece: null }] = onRack(rack);
    expect(piece?.defects).toEqual([]);
    expect(piece?.beside).toEqual([{ ...knots[0], x: -inches(1) }]);
    expect(asBoard(piece!, '').defects).toEqual(piece?.beside);
  });

  it('refuses an offcut whose name goes on no wood', () => {
    const [laid] = layout.boards;
    const named = {
      ...layout,
      boards: [{ ...laid!, offcuts: [{ ...laid!.offcuts[0]!, id: 'X'.repeat(1e6) }] }],
    };
    expect(bookLayout(noRack, { ...cut, layout: named })).toMatchObject({
      ok: false,
      problems: [{ kind: 'name too long' }],
    });
  });

  it('is refused a second time, whatever order its boards stand in; not after an undo', () => {
    const rack = after(book());
    expect(book()(rack)).toEqual({ ok: false, problems: [{ kind: 'booked before', booking: 1, time: 'T' }] });
    const undone = after(book(), (before) => undoLast(before, hand));
    expect(onRack(undone)).toEqual([]);
    expect(undone.used).toEqual([]);
    const again = after(book(), (before) => undoLast(before, hand), book());
    expect(onRack(again).map(({ piece }) => piece.name)).toEqual(['C234X']);
    const [first] = layout.boards;
    const other = first === undefined ? [] : [{ ...first, copy: 2 }, first];
    expect(layoutFingerprint(bareLayout(other))).toBe(layoutFingerprint(bareLayout([...other].reverse())));
  });

  it('uses copies up one by one, and no more than there are', () => {
    const withOther = (id: string): Partial<CutLayout> => ({
      layout: bareLayout([{ ...layout.boards[0]!, offcuts: [{ ...layout.boards[0]!.offcuts[0]!, id }] }]),
    });
    const rack = after(book(), book(withOther('D234X')));
    expect(rack.used).toHaveLength(2);
    expect(book(withOther('F234X'))(rack)).toEqual({
      ok: false,
      problems: [{ kind: 'board used up', board: 'B1' }],
    });
    // The same name in another job is another board.
    expect(book({ ...withOther('F234X'), key: 'other' })(rack).ok).toBe(true);
  });

  it('gives a new name to an offcut whose name was given meanwhile, and says so', () => {
    const rack = after(book());
    const booked = bookLayout(rack, { ...cut, key: 'other' });
    if (!booked.ok) throw new Error('refused');
    const [renamed] = booked.value.renamed;
    expect(renamed?.from).toBe('C234X');
    expect(isIdentifier(renamed?.to ?? '')).toBe(true);
  });

  it('of rack pieces takes each once, and says who has it when it is gone', () => {
    const useRack = bareLayout([
      {
        board: 'C234X',
        copy: 1,
        length: inches(24),
        width: inches(8),
        offcuts: [{ id: 'K', x: 0, y: 0, length: inches(12), width: inches(8) }],
      },
    ]);
    const second: Partial<CutLayout> = { layout: useRack, key: 'second', boards: [] };
    const rack = after(book(), book(second));
    expect(rack.pieces.get('C234X')?.where).toEqual({ kind: 'taken', job: 'second', booking: 2 });
    const grandchild = rack.pieces.get('K')?.piece;
    expect(grandchild).toMatchObject({ cost: 6, parent: { name: 'C234X', x: 0, y: 0 } });
    expect(grandchild?.defects).toHaveLength(2);
    expect(book({ ...second, key: 'third' })(rack)).toEqual({
      ok: false,
      problems: [{ kind: 'piece not on the rack', name: 'C234X', where: 'taken', near: null }],
    });
    expect(book({ ...second, key: 'third' })(noRack)).toEqual({
      ok: false,
      problems: [{ kind: 'board unknown', board: 'C234X' }],
    });
    const twice = bareLayout([useRack.boards[0]!, useRack.boards[0]!]);
    expect(book({ ...second, layout: twice })(after(book()))).toMatchObject({ ok: false });
  });

  it('names offcuts for the wood: the same again for the same layout, never one in use', () => {
    const named = nameOffcuts(layout, 'hearth', new Set());
    const id = named.boards[0]?.offcuts[0]?.id ?? '';
    expect(isIdentifier(id)).toBe(true);
    expect(nameOffcuts(layout, 'hearth', new Set(['other']))).toEqual(named);
    expect(nameOffcuts(layout, 'hearth', new Set([id])).boards[0]?.offcuts[0]?.id).not.toBe(id);
  });
});

describe('bookings by hand', () => {
  it('take and discard all pieces named or none', () => {
    const rack = after(book());
    const wrong = takePieces(rack, ['C234X', 'C243X'], hand);
    expect(wrong).toEqual({
      ok: false,
      problems: [{ kind: 'piece not on the rack', name: 'C243X', where: 'unknown', near: 'C234X' }],
    });
    const gone = after(book(), (before) => discardPieces(before, ['c234x', 'C234X'], hand));
    expect(onRack(gone)).toEqual([]);
    expect(takePieces(gone, ['C234X'], hand)).toMatchObject({ problems: [{ where: 'discarded' }] });
  });

  it('correct sizes, losing the defects that the new size leaves out', () => {
    const rack = after(book(), (before) =>
      correctPiece(before, 'C234X', { turn: 'end for end', length: inches(15.5), tone: 'pale' }, hand),
    );
    const piece = rack.pieces.get('C234X')?.piece;
    expect(piece).toMatchObject({
      length: inches(15.5),
      tone: 'pale',
      cost: 12,
      parent: { turn: 'end for end' },
    });
    // The knot was 8…10 in of 24, so 14…16 turned: half an inch is cut off it. The check (0…4) is gone.
    expect(piece?.defects).toEqual([
      { kind: 'sound knot', face: 'A', x: inches(14), y: inches(4), length: inches(1.5), width: inches(2) },
    ]);
    expect(correctPiece(rack, 'C234X', { tone: 'pale' }, hand)).toEqual({
      ok: false,
      problems: [{ kind: 'piece as it is', name: 'C234X' }],
    });
  });

  it('a history by hand is folded with its faults named', () => {
    const text = [
      'action,piece,from,length,width,undoes,booking,thickness',
      'put,a,,20 in,4 in,,1,3/4 in',
      'put,a,,20 in,4 in,,2,3/4 in',
      'take,b,,,,,3',
      'discard,a,,,,,4',
      'take,a,,,,,5',
      'undo,,,,,9,6',
      'undo,,,,,4,7',
      'undo,,,,,4,8',
    ].join('\n');
    const rack = foldJournal(read(text).entries);
    expect(rack.notices).toMatchObject([
      { kind: 'entry out of place', line: 7, name: '9', why: 'no such booking' },
      { line: 9, name: '4', why: 'undone before' },
      { line: 3, name: 'a', why: 'already on the rack' },
      { line: 4, name: 'b', why: 'not on the rack' },
    ]);
    // The discard was undone, so the take after it stands.
    expect(rack.pieces.get('a')?.where.kind).toBe('taken');
  });
});

describe('the stock of the next job', () => {
  const job: Job = {
    name: 'hearth',
    shop: defaultShop,
    parts: [plainPart({ name: 'front', length: inches(20), width: inches(4) })],
    boards: [board],
  };

  it('has the used copies less and the rack more', () => {
    const stocked = stockedJob(job, after(book()), 'hearth');
    expect(stocked.job.boards.map(({ name, quantity, origin }) => [name, quantity, origin])).toEqual([
      ['B1', 1, 'job'],
      ['C234X', 1, 'rack'],
    ]);
    expect(stocked.usedUp).toEqual(new Map([['B1', 1]]));
    expect(stocked.job.boards[1]).toMatchObject({ cost: 12, surface: 'S4S', length: ticks(24 * 8128) });
    expect(stockedJob(job, after(book()), 'other').job.boards[0]?.quantity).toBe(2);
  });

  it('leaves out what cannot serve: another species, too thin, too short', () => {
    const rack = after(book());
    const names = (given: Partial<Job>): string[] =>
      stockedJob({ ...job, ...given }, rack, 'x').job.boards.map(({ name }) => name);
    expect(names({})).toEqual(['B1', 'C234X']);
    expect(names({ boards: [{ ...board, species: 'Walnut ' }] })).toEqual(['B1', 'C234X']);
    expect(names({ boards: [{ ...board, species: 'red oak' }] })).toEqual(['B1']);
    expect(names({ boards: [] })).toEqual(['C234X']);
    expect(names({ parts: [plainPart({ name: 'p', length: inches(25), width: inches(2) })] })).toEqual([
      'B1',
    ]);
    const across = plainPart({ name: 'p', length: inches(25), width: inches(2), grain: 'across' });
    expect(names({ parts: [across] })).toEqual(['B1', 'C234X']);
    const thick = plainPart({ name: 'p', length: inches(5), width: inches(2), thickness: inches(1) });
    expect(names({ parts: [thick] })).toEqual(['B1']);
  });

  it('keeps a rack piece out that bears the name of a board of the job', () => {
    const stocked = stockedJob({ ...job, boards: [{ ...board, name: 'C234X' }] }, after(book()), 'x');
    expect(stocked.nameClashes).toEqual(['C234X']);
    expect(stocked.job.boards.map(({ origin }) => origin)).toEqual(['job']);
  });
});
