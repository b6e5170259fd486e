import { describe, expect, it } from 'vitest';
import { type Outcome, outcomeOf } from './any-job/outcome.ts';

/** Of many more, `npm run bench -- any-job 1-20000` tells. */
const seeds = Array.from({ length: 150 }, (_, index) => index + 1);

describe('random jobs in which any rules meet', () => {
  const outcomes = new Map<number, Outcome>();

  it.each(seeds)('seed %i: laid out, sound by the check and by a replay of its own', (seed) => {
    const outcome = outcomeOf(seed, 0);
    outcomes.set(seed, outcome);
    expect(outcome.wrong).toEqual([]);
  });

  it('are neither all short nor all laid out, and many have runs', () => {
    const share = (of: (outcome: Outcome) => boolean): number =>
      [...outcomes.values()].filter(of).length / seeds.length;
    expect(share(({ isShort }) => isShort)).toBeGreaterThan(0.2);
    expect(share(({ isShort }) => !isShort)).toBeGreaterThan(0.2);
    expect(share(({ isProven }) => isProven)).toBeGreaterThan(0.4);
    expect(share(({ hasRun }) => hasRun)).toBeGreaterThan(0.15);
  });
});
