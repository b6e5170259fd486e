import { describe, expect, it } from 'vitest';
import type { Visit } from '../../../src/decide/buy/estimate/draw.ts';
import { drawMixedVisit } from '../../../src/decide/buy/estimate/draw.ts';
import { type LumberEstimate, gradeEstimate } from '../../../src/decide/buy/estimate/estimate.ts';
import { type GradePrice, priceOf } from '../../../src/decide/buy/estimate/grade-price.ts';
import { spareLines, verdictWords } from '../../../src/decide/buy/estimate/list-words.ts';
import { lumberWanted, toDraw } from '../../../src/decide/buy/estimate/lumber-wanted.ts';
import { hardestToFind, mixEstimate, mixesOf } from '../../../src/decide/buy/estimate/mix.ts';
import { shoppingList } from '../../../src/decide/buy/estimate/shopping-list.ts';
import { wantedPieces } from '../../../src/decide/buy/estimate/wanted.ts';
import { inches } from '../../../src/base/units/tick.ts';
import { defaultShop } from '../../../src/flow/shop/shop.ts';
import type { Job } from '../../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../../laws/random-board.ts';

const board = (name: string, grade: string, cost: number, more: object = {}) =>
  plainBoard({ name, length: inches(96), width: inches(6), grade, cost, yardFeet: 4, ...more });
const part = (name: string, length: number, width: number, more: object = {}) =>
  plainPart({ name, length: inches(length), width: inches(width), ...more });

describe('the usual price of a grade', () => {
  const none = new Map();
  it('is not moved by one dear board, and says its range', () => {
    const boards = [board('a', 'FAS', 34), board('b', 'FAS', 34), board('curly', 'FAS', 70)];
    expect(priceOf('FAS', none, boards, 1)).toEqual({
      perFoot: 8.5,
      source: 'boards of that grade',
      range: { boards: 3, low: 8.5, high: 17.5 },
    });
  });

  it('is never the shop’s: boards without a price of their own say nothing', () => {
    expect(priceOf('1C', none, [board('a', '1C', 40, { unpriced: true })], 1).perFoot).toBeNull();
    expect(priceOf('1C', new Map([['1C', 6.4]]), [], 1)).toMatchObject({ perFoot: 6.4, source: 'given' });
  });

  it('is that of the asked thickness, where boards of it are at hand', () => {
    const thick = board('t', 'FAS', 60, { nominalInches: 1.25 });
    expect(priceOf('FAS', none, [board('a', 'FAS', 34), thick], 1).perFoot).toBe(8.5);
    expect(priceOf('FAS', none, [board('a', 'FAS', 34), thick], 2).range?.boards).toBe(2);
  });
});

const job: Job = {
  name: 'job',
  shop: defaultShop,
  boards: [],
  parts: [
    part('left', 7, 8, { run: 'face', rightEnd: 45 }),
    part('front', 96, 8, { run: 'face', leftEnd: 45, show: 1 }),
    part('panel', 40, 9, { glueUp: 2 }),
    part('cleat', 20, 2, { quality: 'sound', quantity: 2 }),
  ],
};

/** Ten visits by hand: boards of 8 BF, `enough` of them, each looked for the run first. */
function visits(enough: number, failed = 0, before = 0): Visit[] {
  return Array.from({ length: 10 }, (_, index) => ({
    cart: [8, 16, 24, 32, 40],
    enough: index < failed ? null : enough,
    pieceArea: 1,
    boardArea: 2,
    unfound: index < failed ? ['the run face'] : [],
    sought: wantedPieces(job)
      .slice(0, 1)
      .map(({ length, width }) => ({ name: 'the run face', length, width, isStrip: false })),
    before,
    broken: [],
  }));
}

const wanted = lumberWanted(job).wanted[0]!;
const known = (perFoot: number): GradePrice => ({ perFoot, source: 'given', range: null });
const unknown: GradePrice = { perFoot: null, source: 'none', range: null };
const estimate = (prices: readonly [GradePrice, GradePrice]): LumberEstimate => ({
  wanted,
  mix: null,
  grades: [
    gradeEstimate(wanted, 'FAS', prices[0], visits(3)),
    gradeEstimate(wanted, '1C', prices[1], visits(4)),
  ],
});

describe('the verdict', () => {
  it('names the cheapest of those with a price', () => {
    expect(verdictWords(estimate([known(10), known(5)]))).toMatch(
      /^4\/4: ask for 28\.0 BF of 1C\. .*\$160\.00/,
    );
  });

  it('never calls a grade without a price the cheapest: it asks for one', () => {
    const words = verdictWords(estimate([known(10), unknown]));
    expect(words).toMatch(/^4\/4: ask for 20\.0 BF of FAS\./);
    expect(words).toContain('No price is known of 1C: ask the yard, then compare with --prices 1C=…');
    const neither = verdictWords(estimate([unknown, unknown]));
    expect(neither).toContain('ask for 20.0 BF of FAS, or 28.0 BF of 1C');
    expect(neither).not.toMatch(/\$|least/);
  });
});

describe('the mix of grades', () => {
  it('is tried only where both prices are known and the better grade is the dearer', () => {
    const { grades } = estimate([known(10), known(5)]);
    expect(mixesOf(grades, 'x')).toEqual([{ better: 'FAS', cheaper: '1C', hardest: 'x' }]);
    expect(mixesOf(estimate([known(10), unknown]).grades, 'x')).toEqual([]);
    expect(mixesOf(estimate([known(4), known(5)]).grades, 'x')).toEqual([]);
  });

  it('takes from the better grade what most visits lacked, else the largest whole piece', () => {
    const list = wantedPieces(job);
    expect(hardestToFind(list, [])).toBe('the run face');
    const lacking = visits(3, 2).map((one) => ({ ...one, unfound: ['cleat'] }));
    expect(hardestToFind(list, [lacking])).toBe('cleat');
    expect(hardestToFind(list.slice(0, 1), [])).toBeNull();
  });

  it('costs what comes home of both, and leads the list where it is the cheapest', () => {
    const prices = new Map([['FAS', known(10)] as const, ['1C', known(5)] as const]);
    const mix = mixEstimate(
      { better: 'FAS', cheaper: '1C', hardest: 'the run face' },
      prices,
      visits(1, 1, 9),
      1,
    )!;
    // 9 BF of FAS at 10; for one board of 8 BF one asks for 4 and brings home 8, at 5.
    expect(mix).toMatchObject({ betterFeet: 9, cheaperFeet: 4, cost: 130 });
    const list = shoppingList({ ...estimate([known(10), known(5)]), mix })!;
    expect(list.asked[0]).toMatchObject({ first: { grade: 'FAS', feet: 9 }, grade: '1C', cost: 130 });
    expect(verdictWords({ ...estimate([known(10), known(5)]), mix })).toContain(
      'ask for 9.0 BF of FAS for the run face, 4.0 BF of 1C for the rest',
    );
  });

  it('is drawn from two piles: what is hardest comes out of the first', () => {
    const { lumber } = toDraw(wanted, '2A');
    const first = toDraw(wanted, 'FAS').lumber;
    const all = drawMixedVisit(wanted.job, first, 'the run face', lumber, 1, 0, ({ boards }) =>
      boards.map(() => 0),
    );
    expect(all.before).toBeGreaterThan(0);
    expect(all.unfound).not.toContain('the run face');
    expect(all.enough).not.toBeNull();
  });
});

describe('the shopping list', () => {
  const list = shoppingList(estimate([known(10), known(5)]))!;

  it('gives the smallest board for what needs a whole one, and the run’s stretches where it is broken', () => {
    const run = list.boards.find(({ name }) => name === 'the run face')!;
    // 7 + 96 and the kerf at 45 degrees, 1/8 × √2, a trim of 1 in at each end: 105.18, up to 1/8; 1/4 in at each edge.
    expect(run.least.length).toBe(inches(105.25));
    expect(run.least.width).toBe(inches(8.5));
    expect(run.count).toBe(1);
    expect(run.broken).toEqual([
      { length: inches(12), width: inches(8.5) },
      // A piece by itself gets room at its mitered end.
      { length: inches(98.25), width: inches(8.5) },
    ]);
    // A cleat comes out of any board that gives the run.
    expect(list.boards.map(({ name }) => name)).not.toContain('cleat');
  });

  it('says spares in two lines', () => {
    const lines = spareLines(list, defaultShop);
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/one spare board.*the run face/);
  });
});
