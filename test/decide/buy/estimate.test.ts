import { describe, expect, it } from 'vitest';
import { inches, ticksPerInch } from '../../../src/base/units/tick.ts';
import { copiesOf, seenOn } from '../../../src/decide/buy/estimate/by-eye.ts';
import { type ComesOut, completer } from '../../../src/decide/buy/comes-out/completer.ts';
import { type Lumber, completes, drawVisit } from '../../../src/decide/buy/estimate/draw.ts';
import { lumberWanted, ownedSuffices, toDraw } from '../../../src/decide/buy/estimate/lumber-wanted.ts';
import { pickBoards, pileOf } from '../../../src/decide/buy/estimate/pick-boards.ts';
import { leastAsk, summarise } from '../../../src/decide/buy/estimate/summary.ts';
import { wantedPieces } from '../../../src/decide/buy/estimate/wanted.ts';
import type { Part } from '../../../src/flow/parts/part.ts';
import { defaultShop } from '../../../src/flow/shop/shop.ts';
import type { Board } from '../../../src/flow/stock/board.ts';
import { isUnsound } from '../../../src/flow/stock/defect.ts';
import type { Job } from '../../../src/flow/stock/job.ts';
import { usable } from '../../../src/flow/stock/usable.ts';
import { clearAreas } from '../../../src/trade/grades/clear-areas.ts';
import { plainBoard, plainPart } from '../../laws/random-board.ts';

const part = (name: string, length: number, width: number, more: Partial<Part> = {}): Part =>
  plainPart({ ...more, name, length: inches(length), width: inches(width) });
const board = (name: string, length: number, width: number, more: Partial<Board> = {}): Board =>
  plainBoard({ ...more, name, length: inches(length), width: inches(width) });
const jobOf = (parts: readonly Part[], boards: readonly Board[] = []): Job => ({
  name: 'job',
  shop: { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0) },
  parts,
  boards,
});

const lumber: Lumber = {
  grade: '2A',
  nominalThickness: '4/4',
  nominalInches: 1,
  dressedThickness: inches(13 / 16),
  surface: 'rough',
  species: '',
  tone: '',
};

/** A stand-in for the solver: the job comes out when the boards have three times the parts' area. */
const byArea: ComesOut = ({ boards, parts }) => {
  const area = (list: readonly { quantity: number; length: number; width: number }[]): number =>
    list.reduce((sum, { quantity, length, width }) => sum + quantity * length * width, 0);
  return area(boards) >= 3 * area(parts) ? boards.map(() => 0) : null;
};

describe('the cut list', () => {
  it('is longest first, every copy on its own, a run as one strip with its miter kerfs', () => {
    const run = { run: 'face', leftEnd: 45, rightEnd: 45 };
    const job = jobOf([
      part('shelf', 20, 8, { quantity: 2 }),
      part('left', 6, 5, run),
      part('front', 40, 5, run),
      part('brace', 10, 30, { grain: 'across' }),
    ]);
    const list = wantedPieces(job);
    expect(list.map(({ parts }) => parts.map(({ name }) => name).join('+'))).toEqual([
      'left+front',
      'brace',
      'shelf',
      'shelf',
    ]);
    expect(list[0]!.length).toBe(inches(46) + Math.ceil(inches(1 / 8) * Math.SQRT2));
    expect([list[1]!.length, list[1]!.width]).toEqual([inches(30), inches(10)]);
  });
});

describe('a piece seen on a board', () => {
  const [shelf] = wantedPieces(jobOf([part('shelf', 20, 6)]));
  const { shop } = jobOf([]);
  const knot = {
    kind: 'sound knot' as const,
    x: inches(10),
    y: inches(2),
    length: inches(2),
    width: inches(2),
  };

  it('may show either face, and keeps clear of what is meant already, a kerf between', () => {
    const onA = board('b', 20, 6, { defects: [{ ...knot, face: 'A' }] });
    expect(seenOn({ board: onA, taken: [] }, shelf!, shop)).not.toBe(null);
    const through = board('b', 20, 6, { defects: [{ ...knot, face: 'through' }] });
    expect(seenOn({ board: through, taken: [] }, shelf!, shop)).toBe(null);
    const long = board('b', 40.125, 6);
    const once = seenOn({ board: long, taken: [] }, shelf!, shop)!;
    expect(seenOn(once, shelf!, shop)).not.toBe(null);
    const scant = board('b', 40, 6);
    expect(seenOn(seenOn({ board: scant, taken: [] }, shelf!, shop)!, shelf!, shop)).toBe(null);
  });

  it('asks for its tone, where it is bound to one', () => {
    const [bound] = wantedPieces(jobOf([part('shelf', 20, 6, { match: { species: null, tone: 'warm' } })]));
    const on = (tone: string) => seenOn({ board: board('b', 20, 6, { tone }), taken: [] }, bound!, shop);
    expect([on('pale'), on('')]).toEqual([null, null]);
    expect(on('warm')).not.toBe(null);
  });

  it('asks for its thickness and its pin', () => {
    const thin = { ...board('b', 20, 6), dressedThickness: inches(1 / 2) };
    expect(seenOn({ board: thin, taken: [] }, shelf!, shop)).toBe(null);
    const [pinned] = wantedPieces(jobOf([part('shelf', 20, 6, { pin: { board: 'c', face: null } })]));
    expect(seenOn({ board: board('b', 20, 6), taken: [] }, pinned!, shop)).toBe(null);
    expect(seenOn({ board: board('c', 20, 6), taken: [] }, pinned!, shop)).not.toBe(null);
  });
});

describe('picking from a pile', () => {
  const pileFrom = (boards: readonly Board[]) => pileOf(boards.length, (at) => boards[at]!);

  it('fills what is owned first, then takes the first board that gives the longest piece still missing', () => {
    const parts = [part('long', 60, 5), part('short', 20, 5, { quantity: 3 })];
    const pile = pileFrom([board('a', 40, 5), board('b', 55, 5), board('c', 70, 5), board('d', 62, 5)]);
    expect(pickBoards(jobOf(parts), pile).needed).toEqual([2, 0, 1]);
    expect(pickBoards(jobOf(parts, [board('own', 62, 11)]), pile).needed).toEqual([]);
    expect(pickBoards(jobOf(parts, [board('own', 62, 5)]), pile).needed).toEqual([0, 1]);
  });

  it('looks for strips where a glue-up allows, and tells what no board gives', () => {
    const pile = pileFrom([board('a', 40, 5), board('b', 40, 5)]);
    const panel = part('panel', 30, 8, { glueUp: 2 });
    expect(pickBoards(jobOf([panel]), pile)).toMatchObject({ needed: [0, 1], unfound: [] });
    const whole = part('panel', 30, 8);
    expect(pickBoards(jobOf([whole]), pile).unfound.map(({ parts }) => parts[0]!.name)).toEqual(['panel']);
  });

  it('counts copies of owned boards', () => {
    expect(copiesOf(jobOf([], [board('a', 9, 9, { quantity: 3 })])).map(({ quantity }) => quantity)).toEqual([
      1, 1, 1,
    ]);
  });
});

describe('a visit', () => {
  const job = jobOf([part('front', 30, 4), part('side', 14, 4, { quantity: 2 })]);

  it('ends at the fewest boards that suffice, in the order taken', () => {
    for (let number = 0; number < 8; number += 1) {
      const boardsOf: Board[][] = [];
      const comesOut: ComesOut = (asked) => {
        boardsOf.push([...asked.boards]);
        return byArea(asked);
      };
      const visit = drawVisit(job, lumber, 3, number, comesOut);
      expect(visit.enough).not.toBe(null);
      const longest = boardsOf.reduce((a, b) => (b.length > a.length ? b : a));
      const suffices = (count: number): boolean =>
        byArea({ ...job, boards: longest.slice(0, count) }) !== null;
      expect(suffices(visit.enough!)).toBe(true);
      expect(suffices(visit.enough! - 1)).toBe(false);
    }
  });

  it('needs nothing where what is owned suffices', () => {
    const owned = { ...job, boards: [board('own', 100, 12)] };
    expect(drawVisit(owned, lumber, 3, 0, byArea).enough).toBe(0);
  });

  it('fails for a piece that no board of any grade gives', () => {
    const visit = drawVisit(jobOf([part('beam', 400, 4)]), lumber, 3, 0, byArea);
    expect(visit).toMatchObject({ enough: null, unfound: ['beam'] });
  });

  it('is the same from the same seed and number, with the real solver', () => {
    const first = drawVisit(job, lumber, 9, 4, completer(1));
    expect(drawVisit(job, lumber, 9, 4, completer(1))).toEqual(first);
    expect(first.enough).not.toBe(null);
    expect(first.pieceArea).toBe((30 + 28) * 4 * ticksPerInch ** 2);
  });
});

/** Another stand-in: every board gives the length of its longest clear strip of 4 in, and all parts need so much. */
const byStrips: ComesOut = ({ boards, parts, shop }) => {
  const strip = (on: Board): number => {
    const holes = on.defects.filter((defect) => isUnsound(defect.kind));
    const strips = clearAreas(usable(on, shop), holes, ({ width }) => width >= inches(4));
    return Math.max(0, ...strips.map(({ length }) => length));
  };
  const needed = parts.reduce((sum, { quantity, length }) => sum + quantity * length, 0);
  const given = boards.reduce((sum, on) => sum + strip(on), 0);
  return given >= needed ? boards.map(() => 0) : null;
};

describe('coverage', () => {
  const job = jobOf([part('front', 50, 4), part('side', 24, 4, { quantity: 5 })]);

  it('the 80 % quantity completes some 80 % of fresh visits: within three standard errors, by a stand-in', () => {
    const count = 80;
    const visits = Array.from({ length: count }, (_, number) => drawVisit(job, lumber, 1, number, byStrips));
    const { boardFeet } = summarise(visits).quantities[1]!;
    const fresh = Array.from({ length: count }, (_, number) =>
      completes(job, lumber, 2, number, boardFeet!, byStrips),
    );
    const share = fresh.filter((done) => done).length / count;
    expect(Math.abs(share - 0.8)).toBeLessThan(3 * Math.sqrt((2 * 0.8 * 0.2) / count));
  });

  it('a visit comes out of what is brought home for its least quantity, and not for half a board foot less', () => {
    for (let number = 0; number < 20; number += 1) {
      const ask = leastAsk(drawVisit(job, lumber, 1, number, byStrips));
      expect(completes(job, lumber, 1, number, ask, byStrips)).toBe(true);
      expect(completes(job, lumber, 1, number, ask - 0.5, byStrips)).toBe(false);
    }
  });
});

describe('what is owned already', () => {
  const parts = [part('front', 30, 4, { show: 1 }), part('side', 14, 4, { show: 1 })];
  const [warm, pale] = [board('w', 31, 4, { tone: 'warm' }), board('p', 15, 4, { tone: 'pale' })];
  const wantedOf = (job: Job) => lumberWanted(job).wanted[0]!;

  it('suffices when the real solver lays the job out on it, what shows in one tone', () => {
    const suffices = (boards: readonly Board[], showTone: 'one' | 'any' = 'one'): boolean => {
      const job = jobOf(parts, boards);
      return ownedSuffices(wantedOf({ ...job, shop: { ...job.shop, showTone } }), completer(1));
    };
    expect(suffices([])).toBe(false);
    expect(suffices([warm, pale])).toBe(false);
    expect(suffices([warm, pale], 'any')).toBe(true);
    expect(suffices([warm, { ...pale, tone: 'warm' }])).toBe(true);
  });

  it('suffices when a panel comes out of it in strips', () => {
    const panel = part('panel', 30, 7, { glueUp: 2 });
    const boards = [board('a', 31, 4), board('b', 31, 4)];
    expect(ownedSuffices(wantedOf(jobOf([panel], boards)), completer(1))).toBe(true);
    expect(ownedSuffices(wantedOf(jobOf([panel], boards.slice(1))), completer(1))).toBe(false);
  });

  it('is matched in tone by what is bought: the tone that most of it has', () => {
    const drawn = toDraw(wantedOf(jobOf(parts, [pale, warm])), '2A');
    expect(drawn.lumber.tone).toBe('warm');
    expect(drawn.job.parts.map(({ match }) => match?.tone)).toEqual(['warm', 'warm']);
    expect(toDraw(wantedOf(jobOf(parts)), '2A').lumber.tone).toBe('');
  });
});

describe('the lumber to buy', () => {
  it('is the thinnest standard stock that dresses to each part; owned boards go to the thickest they can serve', () => {
    const job = jobOf(
      [
        part('thin', 12, 6, { thickness: inches(1 / 2) }),
        part('usual', 12, 6, { thickness: inches(13 / 16) }),
        part('thick', 12, 6, { thickness: inches(7 / 8) }),
        part('post', 12, 6, { thickness: inches(6) }),
      ],
      [board('four', 20, 6), { ...board('eight', 20, 6), dressedThickness: inches(1.75) }],
    );
    const { wanted, tooThick } = lumberWanted(job);
    expect(wanted.map(({ nominalThickness }) => nominalThickness)).toEqual(['4/4', '5/4']);
    expect(wanted.map(({ job: { parts } }) => parts.map(({ name }) => name))).toEqual([
      ['thin', 'usual'],
      ['thick'],
    ]);
    expect(wanted.map(({ job: { boards } }) => boards.map(({ name }) => name))).toEqual([
      ['four'],
      ['eight'],
    ]);
    expect(wanted.map(({ netBoardFeet }) => netBoardFeet)).toEqual([1, 0.5 * 1.25]);
    expect(tooThick.map(({ name }) => name)).toEqual(['post']);
  });
});
