import { describe, expect, it } from 'vitest';
import { prepareGuillotine } from '../../src/flow/patterns/guillotine/prepare-guillotine.ts';
import { patternFaults } from '../patterns/guillotine/pattern-faults.ts';
import { plateFamilies, plateProblems } from './guillotine-plates.ts';

/** Solved likewise, but each takes longer than a quick test should: `npm run bench published` has them all. */
const leftToTheBench: readonly string[] = [
  ...['gcut13', 'Hchl8s', 'CU11', 'CHL1/2H', 'Hchl2/2H', 'Hchl4s/2H', 'Hchl7s/2H', 'Hchl8s/2H'],
];

describe.each(plateFamilies)('%s, published optima', (family) => {
  const problems = plateProblems(family).filter(({ name }) => !leftToTheBench.includes(name));
  it.each(problems)('$name: $optimum', ({ plate, kinds, worth, freeTrim, optimum }) => {
    const answer = prepareGuillotine(plate, kinds, { freeTrim }).price(worth, undefined, {
      work: 1e9,
      seed: 1,
    });
    expect(patternFaults(plate, kinds, worth, answer.pattern, freeTrim)).toEqual([]);
    expect(answer.pattern.value).toBe(optimum);
    expect(answer.bound).toBe(optimum);
    expect(answer.proven).toBe(true);
  });
});

describe('the other way round', () => {
  const small = plateProblems('constrained_guillotine_value').filter(({ name }) =>
    ['cgcut1', 'OF2', 'wang20', 'CU7', 'gcut7'].includes(name),
  );
  it.each(small)('$name turned over its diagonal keeps its optimum', ({ plate, kinds, worth, optimum }) => {
    const turned = { ...plate, length: plate.width, width: plate.length };
    const pieces = kinds.map((kind) => ({
      ...kind,
      shapes: kind.shapes.map(({ length, width }) => ({ length: width, width: length })),
    }));
    const answer = prepareGuillotine(turned, pieces).price(worth, undefined, { work: 1e9, seed: 1 });
    expect([answer.pattern.value, answer.bound]).toEqual([optimum, optimum]);
  });

  it.each(small)('$name keeps its optimum with a kerf taken from all sizes ten times as large', (problem) => {
    // The fixture's own remark: scale up, subtract the kerf from plate and parts.
    const kerf = 3;
    const scaled = (size: number): number => 10 * size - kerf;
    const plate = {
      ...problem.plate,
      length: scaled(problem.plate.length),
      width: scaled(problem.plate.width),
      crosscutKerf: kerf,
      ripKerf: kerf,
    };
    const kinds = problem.kinds.map((kind) => ({
      ...kind,
      shapes: kind.shapes.map(({ length, width }) => ({ length: scaled(length), width: scaled(width) })),
    }));
    const answer = prepareGuillotine(plate, kinds).price(problem.worth, undefined, { work: 1e9, seed: 1 });
    expect(patternFaults(plate, kinds, problem.worth, answer.pattern)).toEqual([]);
    expect([answer.pattern.value, answer.bound]).toEqual([problem.optimum, problem.optimum]);
  });
});
