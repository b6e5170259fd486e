import { describe, expect, it } from 'vitest';
import { prepareGuillotine } from '../../../src/flow/patterns/guillotine/prepare-guillotine.ts';
import type { Kind, Plate } from '../../../src/flow/patterns/plate.ts';
import { patternFaults } from './pattern-faults.ts';

const plate: Plate = Object.freeze({
  length: 96,
  width: 17,
  crosscutKerf: 1,
  ripKerf: 1,
  shortestRip: 8,
  stages: 'any',
  clearances: [[{ x: 40, y: 5, length: 4, width: 3 }], []],
});

function kind(length: number, width: number, cap: number, clearances: number[] = [0]): Kind {
  return Object.freeze({ shapes: [{ length, width }], cap, clearances });
}

const kinds = [kind(30, 8, 2), kind(22, 5, 3), kind(11, 8, 4, [1, 0]), kind(6, 3, 5)];
const worth = [260, 115, 90, 17];
const options = { work: 1e8, seed: 1 };

describe('a prepared plate', () => {
  const prepared = prepareGuillotine(plate, kinds);

  it('answers again and again, with other worths and caps, as if asked for the first time', () => {
    const first = prepared.price(worth, undefined, options);
    const other = prepared.price([1, 200, 3, 90], [1, 1, 1, 1], options);
    expect(prepared.price(worth, undefined, options)).toEqual(first);
    expect(prepareGuillotine(plate, kinds).price([1, 200, 3, 90], [1, 1, 1, 1], options)).toEqual(other);
    expect(first.proven && other.proven).toBe(true);
    const limited = kinds.map((each) => ({ ...each, cap: 1 }));
    expect(patternFaults(plate, limited, [1, 200, 3, 90], other.pattern)).toEqual([]);
  });

  it('stops at the target, and finds nothing below the floor', () => {
    const best = prepared.price(worth, undefined, options);
    const enough = prepared.price(worth, undefined, { ...options, target: best.pattern.value / 2 });
    expect(enough.pattern.value).toBeGreaterThanOrEqual(best.pattern.value / 2);
    expect(enough.work).toBeLessThanOrEqual(best.work);
    const none = prepared.price(worth, undefined, { ...options, floor: best.pattern.value });
    expect(none).toMatchObject({ pattern: { placements: [], value: 0 }, bound: best.bound, proven: true });
    const just = prepared.price(worth, undefined, { ...options, floor: best.pattern.value - 1 });
    expect(just.pattern.value).toBe(best.pattern.value);
  });

  it('with worths that are not whole numbers closes the gap to rounding', () => {
    const thirds = worth.map((each) => each / 3);
    const { pattern, bound, proven } = prepared.price(thirds, undefined, options);
    expect(proven).toBe(true);
    expect(pattern.value).toBeCloseTo(prepared.price(worth, undefined, options).pattern.value / 3, 9);
    expect(bound).toBe(pattern.value);
  });

  it('with little work gives what it has, and a bound', () => {
    const best = prepared.price(worth, undefined, options).pattern.value;
    const quick = prepared.price(worth, undefined, { ...options, work: 1 });
    expect(patternFaults(plate, kinds, worth, quick.pattern)).toEqual([]);
    expect(quick.pattern.value).toBeLessThanOrEqual(best);
    expect(quick.bound).toBeGreaterThanOrEqual(best);
  });
});

describe('nothing to cut', () => {
  const empty = { pattern: { placements: [], value: 0 }, bound: 0, proven: true };
  const cases: [why: string, plate: Plate, kinds: Kind[], worth: number[]][] = [
    ['no kinds', plate, [], []],
    ['no plate left', { ...plate, length: -3, width: 0 }, kinds, worth],
    ['pieces larger than the plate', plate, [kind(97, 2, 1), kind(2, 18, 1)], [5, 5]],
    ['no clearance', plate, [kind(10, 2, 3, [])], [5]],
    ['caps of 0', plate, [kind(10, 2, 0)], [5]],
    ['no worth', plate, [kind(10, 2, 3), kind(5, 5, 1), kind(4, 4, 1)], [0, -4, NaN]],
    [
      'a plate that is all defect',
      { ...plate, clearances: [[{ x: -5, y: -5, length: 200, width: 200 }], []] },
      [kind(2, 2, 9)],
      [5],
    ],
  ];
  it.each(cases)('%s', (_why, on, of, at) => {
    expect(prepareGuillotine(on, of).price(at, undefined, options)).toMatchObject(empty);
  });
});

describe('stages', () => {
  /**
   * A strip 20 x 4, over it 12 x 6 beside 8 x 5: a rip for the strip (stage 2), a crosscut between the two others (3),
   * a rip to bring the last from 6 to 5 (4). In two stages the best are the two others, one a section.
   */
  const board: Plate = { ...plate, length: 20, width: 10, crosscutKerf: 0, ripKerf: 0, shortestRip: 0 };
  const three = [kind(20, 4, 1), kind(12, 6, 1), kind(8, 5, 1)];
  it.each([
    [1, false, 0],
    [2, false, 72 + 40],
    [3, false, 80 + 72],
    [4, false, 80 + 72 + 40],
    ['any' as const, false, 80 + 72 + 40],
    [1, true, 72 + 40],
    [2, true, 80 + 72],
    [3, true, 80 + 72 + 40],
  ])('%s, free trim %s: %i', (stages, freeTrim, value) => {
    const clear = { ...board, stages, clearances: [[]] };
    const answer = prepareGuillotine(clear, three, { freeTrim }).price([80, 72, 40], undefined, options);
    expect(answer).toMatchObject({ pattern: { value }, bound: value, proven: true });
  });
});
