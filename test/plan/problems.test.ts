import { describe, expect, it } from 'vitest';
import { type Tick, inches, ticks } from '../../src/base/units/tick.ts';
import type { Leg, Mantel } from '../../src/flow/plan/mantel.ts';
import { planMantel } from '../../src/flow/plan/plan-mantel.ts';
import type { PlanProblem } from '../../src/flow/plan/plan-problem.ts';
import { planProblemWords } from '../../src/flow/plan/plan-problem-words.ts';
import { leg, plainMantel } from './mantels.ts';

const style = { units: 'in', printFraction: 32 } as const;

function problemsOf(mantel: Partial<Mantel>, legs: readonly Leg[]): readonly PlanProblem[] {
  const result = planMantel({ ...plainMantel, ...mantel }, legs);
  if (result.ok) throw new Error('planned after all');
  return result.problems;
}

const front = leg('front', 60, 8.75);
const cases: [name: string, mantel: Partial<Mantel>, legs: Leg[], kinds: string[], says: RegExp][] = [
  ['no legs', {}, [], ['no legs'], /no leg/],
  [
    'a leg of no length',
    {},
    [leg('front', 0, 8.75)],
    ['not above zero'],
    /leg "front": the along wall must be/,
  ],
  [
    'a leg that stands off nothing',
    { ledger: null },
    [leg('front', 60, 0)],
    ['not above zero'],
    /projection/,
  ],
  [
    'a facing as thick as the mantel stands off',
    { ledger: null },
    [leg('front', 60, 0.75)],
    ['no depth'],
    /"front" stands off the wall by no more than its facing/,
  ],
  [
    'an end in a wall that slants away',
    { rightWallAngle: 150 },
    [front],
    ['side wall out of range'],
    /right end cannot die into a wall at 150°/,
  ],
  ['no face', { faceHeight: ticks(0) }, [front], ['not above zero'], /the face height must be above zero/],
  [
    'below the opening',
    { heightAboveOpening: inches(-1) },
    [front],
    ['not above zero'],
    /height above opening/,
  ],
  [
    'a face of two boards',
    { faceHeight: inches(1.5), ledger: null },
    [front],
    ['no hollow'],
    /a face of 1 1\/2"/,
  ],
  [
    'a high ledger',
    { ledger: { thickness: inches(1), width: inches(6) } },
    [front],
    ['ledger too high'],
    /hollow of 5"/,
  ],
  [
    'a thick ledger',
    { ledger: { thickness: inches(8), width: inches(3) } },
    [front],
    ['ledger too thick'],
    /behind/,
  ],
  [
    'two legs of one name',
    {},
    [front, leg('front', 20, 8.75)],
    ['leg named twice'],
    /two legs are called "front"/,
  ],
  [
    'two runs in line',
    {},
    [{ ...front, turn: 0 }, leg('right', 9, 8.75)],
    ['corner out of range'],
    /wall corner of 180°/,
  ],
  [
    'a turn back',
    {},
    [{ ...front, turn: 180 }, leg('right', 9, 8.75)],
    ['corner out of range'],
    /wall corner of 0°/,
  ],
  ['no number', {}, [{ ...front, turn: NaN }, leg('right', 9, 8.75)], ['corner out of range'], /NaN/],
  [
    'an inside leg shorter than its neighbours are deep',
    {},
    [leg('left', 40, 8.75, -90), leg('back', 14, 3.75, -90), leg('right', 30, 8.75)],
    ['leg too short'],
    // 14 less 8 and 8 for the neighbours, less a thickness at each end of its outer face: 3 1/2 too little.
    /leg "back" is too short for the corners at its ends, by 3 1\/2"/,
  ],
  [
    'walls that cross',
    {},
    [leg('a', 60, 3.75), leg('b', 20, 3.75), leg('c', 30, 3.75), leg('d', 40, 3.75)],
    ['legs cross'],
    /legs "a" and "d" run into each other/,
  ],
  [
    'returns that meet across an alcove',
    {},
    [leg('a', 20, 3.75, -90), leg('b', 20, 3.75, -90), leg('c', 12, 3.75, -90), leg('d', 18, 3.75)],
    ['legs cross'],
    /run into each other/,
  ],
];

describe('what cannot be built', () => {
  it.each(cases)('%s', (_name, mantel, legs, kinds, says) => {
    const problems = problemsOf(mantel, legs);
    expect(problems.map(({ kind }) => kind)).toEqual(kinds);
    const words = planProblemWords(problems[0]!, style);
    expect(words.says).toMatch(says);
    expect(words.mend.length).toBeGreaterThan(20);
  });

  it('names every problem of the sizes at once', () => {
    const legs = [leg('front', 0, 0), leg('front', 9, 8.75)];
    const kinds = problemsOf({ thickness: ticks(0) as Tick }, legs).map(({ kind }) => kind);
    expect(kinds).toEqual(['not above zero', 'not above zero', 'not above zero', 'leg named twice']);
  });

  it('a piece longer than any board: the corner is nearly a turn back', () => {
    const problems = problemsOf({}, [leg('front', 60, 500.75, 175), leg('right', 60, 500.75)]);
    expect(problems.map(({ kind }) => kind)).toEqual(['piece too long', 'piece too long']);
  });

  it('an unnamed leg is named after its place, and the last corner is not read', () => {
    const result = planMantel(plainMantel, [leg('', 60, 8.75), { ...leg(' ', 9, 8.75), turn: NaN }]);
    expect(result.ok && result.value.legs.map(({ name }) => name)).toEqual(['leg 1', 'leg 2']);
  });
});
