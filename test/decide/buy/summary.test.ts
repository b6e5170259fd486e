import { describe, expect, it } from 'vitest';
import { boardsTaken } from '../../../src/decide/buy/estimate/cart.ts';
import type { Visit } from '../../../src/decide/buy/estimate/draw.ts';
import {
  broughtHome,
  chanceOf,
  leastAsk,
  shareOf,
  summarise,
} from '../../../src/decide/buy/estimate/summary.ts';

function visit(cart: readonly number[], enough: number | null): Visit {
  return {
    cart,
    enough,
    pieceArea: enough === null ? 0 : 50,
    boardArea: enough === null ? 0 : 100,
    unfound: [],
    broken: [],
    sought: [],
    before: 0,
  };
}

describe('the interval of a share', () => {
  // Newcombe 1998, "Two-sided confidence intervals for the single proportion", Statistics in Medicine 17: table I,
  // score method without continuity correction (Wilson). From memory, four decimals.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%d of %d', (done, of, low, high) => {
    const share = shareOf(done, of);
    expect(share.share).toBe(done / of);
    expect(Math.abs(share.low - low)).toBeLessThan(0.0001);
    expect(Math.abs(share.high - high)).toBeLessThan(0.0001);
  });
});

describe('boards that come home for a quantity', () => {
  it('are those whose cart comes nearest to it; at a tie, one more', () => {
    const cart = [7, 15, 24];
    expect([0, 3, 3.5, 10.5, 11, 19, 19.5, 99].map((feet) => boardsTaken(cart, feet))).toEqual([
      0, 0, 1, 1, 2, 2, 3, 3,
    ]);
    for (let feet = 0; feet <= 24; feet += 0.5) {
      const far = [0, ...cart].map((held) => Math.abs(held - feet));
      expect(far[boardsTaken(cart, feet)]).toBe(Math.min(...far));
    }
  });
});

describe('the least quantity that completes a visit', () => {
  it('lies halfway between the carts before and with the last board needed', () => {
    expect(leastAsk(visit([7, 15, 24], 2))).toBe(11);
    expect(leastAsk(visit([7, 15, 24], 1))).toBe(3.5);
    expect(leastAsk(visit([7, 15, 24], 0))).toBe(0);
    expect(leastAsk(visit([7, 15.5, 24], 2))).toBe(11.5);
    expect(leastAsk(visit([7, 15, 24], null))).toBe(Infinity);
  });

  it('is the least for which what comes home is enough', () => {
    for (const each of [visit([3, 9, 11, 20], 3), visit([5, 6, 7, 8], 1), visit([4, 8, 12], 2)]) {
      const ask = leastAsk(each);
      expect(boardsTaken(each.cart, ask)).toBe(each.enough);
      expect(boardsTaken(each.cart, ask - 0.5)).toBe(each.enough! - 1);
    }
  });
});

describe('quantities', () => {
  // Ten visits whose least asks are 1, 2, … 10.
  const visits = Array.from({ length: 10 }, (_, index) =>
    visit(index === 0 ? [2, 12] : [index, index + 2, index + 12], index === 0 ? 1 : 2),
  );

  it('are the order statistics with at least the asked share at or below', () => {
    const { quantities, completed } = summarise(visits);
    expect(completed).toBe(10);
    expect(quantities.map(({ boardFeet }) => boardFeet)).toEqual([5, 8, 10]);
    for (const { chance, boardFeet } of quantities) {
      expect(chanceOf(visits, boardFeet!).share).toBeGreaterThanOrEqual(chance);
      expect(chanceOf(visits, boardFeet! - 0.5).share).toBeLessThan(chance);
    }
  });

  it('have an interval that holds them, open where the visits do not reach', () => {
    for (const { boardFeet, low, high } of summarise(visits).quantities) {
      expect(low).toBeLessThanOrEqual(boardFeet!);
      if (high !== null) expect(high).toBeGreaterThanOrEqual(boardFeet!);
    }
    expect(summarise(visits).quantities[2]!.high).toBe(null);
  });

  it('are not reached where too few piles give the job', () => {
    const poor = [...visits.slice(0, 6), ...Array.from({ length: 4 }, () => visit([5, 9], null))];
    const summary = summarise(poor);
    expect(summary.completed).toBe(6);
    expect(summary.quantities.map(({ boardFeet }) => boardFeet)).toEqual([5, null, null]);
    expect(summary.quantities[1]!.broughtHome).toBe(null);
  });

  it('ask the root of the chance of each of two thicknesses', () => {
    expect(summarise(visits, 2).quantities.map(({ boardFeet }) => boardFeet)).toEqual([8, 9, 10]);
  });

  it('bring home whole boards, over the lists that go so far', () => {
    expect(broughtHome([visit([3, 9], 1), visit([5, 7], 1)], 6)).toBe((9 + 7) / 2);
    expect(broughtHome([visit([3, 9], 1), visit([5, 7], 1)], 8)).toBe(9);
    expect(broughtHome(visits, 0)).toBe(0);
  });
});

describe('yield', () => {
  it('is a ratio of sums, with the interval of a ratio', () => {
    const mixed = [
      { ...visit([9], 1), pieceArea: 40, boardArea: 100 },
      { ...visit([9], 1), pieceArea: 120, boardArea: 200 },
      visit([9], null),
    ];
    const summary = summarise(mixed);
    expect(summary.yield).toBeCloseTo(160 / 300, 12);
    expect(summary.yieldLow).toBeLessThan(summary.yield!);
    expect(summary.yieldHigh).toBeGreaterThan(summary.yield!);
  });
});
