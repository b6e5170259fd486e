import { describe, expect, it } from 'vitest';
import { cheapestPlans } from '../../../src/decide/buy/yard/runner-ups.ts';
import { spareAnswer } from '../../../src/decide/buy/yard/spares.ts';
import { choose } from '../../../src/flow/choice/choose.ts';
import { finish } from '../../../src/flow/choice/progress.ts';
import { everyChoice, packs, stickSolve, stickYard } from './stick-yard.ts';

const solver = (job: Parameters<typeof choose>[0]) => finish(choose(job, { seed: 1, effort: 0.3 }));

describe('the cheapest choice at the yard', () => {
  it('with the real solver, costs what trying every choice finds, on 100 small yards', () => {
    let bought = 0;
    for (let seed = 1; seed <= 100; seed += 1) {
      const yard = Object.freeze(stickYard(seed));
      const [plan] = finish(cheapestPlans(yard.owned, yard.yard, 1, solver));
      const best = everyChoice(yard)[0];
      expect([seed, plan?.money]).toEqual([seed, best?.money]);
      if (plan === undefined) continue;
      const taken = yard.yard.map((board, row) => ({ ...board, quantity: plan.taken[row]! }));
      expect(packs(yard.owned.parts, [...yard.owned.boards, ...taken])).toBe(true);
      if (plan.money > 0) bought += 1;
    }
    expect(bought).toBeGreaterThan(50);
  });

  it('and its runner-ups are the next choices that do not merely add boards, in order', () => {
    for (let seed = 1; seed <= 100; seed += 1) {
      const yard = stickYard(seed);
      const plans = finish(cheapestPlans(yard.owned, yard.yard, 4, stickSolve));
      const wanted: ReturnType<typeof everyChoice> = [];
      for (const choice of everyChoice(yard)) {
        const adds = wanted.some(({ taken }) => taken.every((copies, row) => choice.taken[row]! >= copies));
        if (!adds && wanted.length < 4) wanted.push(choice);
      }
      expect([seed, plans.map(({ money }) => money)]).toEqual([seed, wanted.map(({ money }) => money)]);
    }
  });
});

describe('spare boards', () => {
  it('the cheapest set that survives the loss of any one taken board is what trying every set finds', () => {
    let needed = 0;
    for (let seed = 1; seed <= 100; seed += 1) {
      const { owned, yard } = stickYard(seed);
      const [plan] = finish(cheapestPlans(owned, yard, 1, stickSolve));
      if (plan === undefined) continue;
      const answer = finish(spareAnswer(owned, yard, plan, { cheapest: stickSolve, comesOut: stickSolve }));
      const survivesAll = (spares: readonly number[]): boolean =>
        plan.taken.every((copies, lost) => {
          if (copies === 0) return true;
          const bought = yard.map((board, row) => ({
            ...board,
            quantity: plan.taken[row]! + spares[row]! - (row === lost ? 1 : 0),
          }));
          return packs(owned.parts, [...owned.boards, ...bought]);
        });
      const sets = subsets(yard.map(({ quantity }, row) => quantity - plan.taken[row]!)).filter(survivesAll);
      const price = (spares: readonly number[]): number =>
        spares.reduce((sum, copies, row) => sum + copies * yard[row]!.cost, 0);
      const least = sets.length === 0 ? null : Math.min(...sets.map(price));
      const found = answer.survived.length === answer.losses.length ? 0 : (answer.cheapest?.money ?? null);
      expect([seed, found]).toEqual([seed, least]);
      if (found !== null && found > 0) needed += 1;
      for (const option of answer.options) {
        expect(option.covers.length).toBeGreaterThan(0);
        expect(option.covers.every((row) => !answer.survived.includes(row))).toBe(true);
      }
    }
    expect(needed).toBeGreaterThan(20);
  });
});

function subsets(most: readonly number[]): number[][] {
  return most.reduce<number[][]>(
    (sets, limit) =>
      sets.flatMap((set) => Array.from({ length: limit + 1 }, (_, copies) => [...set, copies])),
    [[]],
  );
}
