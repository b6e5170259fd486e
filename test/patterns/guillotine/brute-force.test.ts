import { describe, expect, it } from 'vitest';
import { chance, random } from '../../../src/base/random/random.ts';
import { prepareGuillotine } from '../../../src/flow/patterns/guillotine/prepare-guillotine.ts';
import { bruteForceBest } from './brute-force.ts';
import { patternFaults } from './pattern-faults.ts';
import { randomCase } from './random-plate.ts';

describe('the best pattern of a tiny plate', () => {
  const cases = 1000;
  const batch = 100;
  const batches = Array.from({ length: cases / batch }, (_, at) => at * batch);
  it.each(batches)('is that of trying every cut: cases %i and on', (from) => {
    for (let seed = from; seed < from + batch; seed++) {
      const stream = random(2024, seed);
      const { plate, kinds, worth } = randomCase(stream);
      const freeTrim = chance(stream, 0.3);
      const answer = prepareGuillotine(plate, kinds, { freeTrim }).price(worth, undefined, {
        work: 1e8,
        seed,
      });
      const best = bruteForceBest(plate, kinds, worth, freeTrim);
      const seen = {
        seed,
        value: answer.pattern.value,
        bound: answer.bound,
        proven: answer.proven,
        faults: patternFaults(plate, kinds, worth, answer.pattern, freeTrim),
      };
      expect(seen).toEqual({ seed, value: best, bound: best, proven: true, faults: [] });
    }
  });
});
