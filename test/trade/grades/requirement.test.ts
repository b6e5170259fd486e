import { describe, expect, it } from 'vitest';
import { ticks, ticksPerInch } from '../../../src/base/units/tick.ts';
import { surfaceMeasure } from '../../../src/trade/board-feet.ts';
import { cuttingUnits } from '../../../src/trade/grades/cutting-size.ts';
import { type Way, waysToMake } from '../../../src/trade/grades/requirement.ts';
import { type Grade, type RuledGrade, faceRules, leastBoard } from '../../../src/trade/grades/rule.ts';
import { type PublishedCase, casesOf, numberIn, textIn } from '../published.ts';

const inFeet = (feet: number): number => Math.round(feet * 12 * ticksPerInch);
const inInches = (inches: number): number => Math.round(inches * ticksPerInch);

/** Ways of a board of ordinary length and width: only SM matters for them but in the long-board and 97 % rules. */
function ways(grade: string, measure: number, feet = 12, width = 8): readonly Way[] {
  const rule = faceRules.get(grade as RuledGrade)!;
  return waysToMake(rule, { surfaceMeasure: measure, length: inFeet(feet), width: inInches(width) });
}

function counted(way: Way | undefined): { atMost: number; units: number } | undefined {
  if (way === undefined || way.kind === 'clear face') return undefined;
  return { atMost: way.atMost, units: way.hundredthsOfUnit / 100 };
}

describe('units and cuttings a grade asks for', () => {
  it.each(casesOf('grade_requirement'))('%s', (_title, { given, expect: asked }) => {
    const found = ways(textIn(given, 'grade'), numberIn(given, 'surface_measure'));
    const standard = counted(found.find(({ kind }) => kind === 'cuttings'));
    expect(standard?.units).toBe(asked['required_units']);
    expect(standard?.atMost).toBe(asked['max_cuttings'] ?? Infinity);
    const extra = counted(found.find(({ kind }) => kind === 'extra cutting'));
    if ('extra_cutting_allowed' in asked) expect(extra !== undefined).toBe(asked['extra_cutting_allowed']);
    if ('units_with_extra_cutting' in asked) expect(extra?.units).toBe(asked['units_with_extra_cutting']);
    if ('max_cuttings_with_extra' in asked) expect(extra?.atMost).toBe(asked['max_cuttings_with_extra']);
  });

  it.each(casesOf('grade_requirement_97pct'))(
    '97 %% rule: %s',
    (_title, { given, expect: asked, tolerance }) => {
      const found = ways('FAS', numberIn(given, 'surface_measure'), 20, numberIn(given, 'width_in'));
      const full = counted(found.find(({ kind }) => kind === 'full width'));
      expect(full?.atMost).toBe(asked['max_cuttings']);
      expect(Math.abs(full!.units - numberIn(asked, 'required_units'))).toBeLessThanOrEqual(tolerance);
    },
  );

  it('grants the 97 % rule from 6 to 12 ft SM and 6 in wide, and no further', () => {
    const granted = (measure: number, width: number): boolean =>
      ways('FAS', measure, 12, width).some(({ kind }) => kind === 'full width');
    expect([granted(5, 6), granted(6, 6), granted(12, 12), granted(13, 12)]).toEqual([
      false,
      true,
      true,
      false,
    ]);
    expect(granted(6, 6 - 1 / ticksPerInch)).toBe(false);
  });

  it.each(casesOf('grade_clear_percent'))(
    'clear share: %s',
    (_title, { given, expect: asked, tolerance }) => {
      const { unitsPerFoot } = faceRules.get(textIn(given, 'grade') as RuledGrade)!;
      expect(unitsPerFoot).toBe(given['units_per_surface_foot']);
      expect(Math.abs((100 * unitsPerFoot) / 12 - numberIn(asked, 'clear_percent'))).toBeLessThanOrEqual(
        tolerance,
      );
    },
  );

  it.each(casesOf('grade_extra_length_rule'))('long boards: %s', (_title, { given, expect: asked }) => {
    const found = ways(
      textIn(given, 'grade'),
      numberIn(given, 'surface_measure'),
      numberIn(given, 'length_ft'),
      16,
    );
    expect(counted(found[0])?.atMost).toBe(asked['max_cuttings']);
  });

  it('has the step table for 1 to 16 ft SM (Wood Handbook Table 6-1, from memory)', () => {
    const cuttings = (grade: string): (number | undefined)[] =>
      Array.from({ length: 16 }, (_, index) => counted(ways(grade, index + 1)[0])?.atMost);
    const none = undefined;
    expect(cuttings('FAS')).toEqual([none, none, none, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4]);
    expect(cuttings('1C')).toEqual([none, 1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4, 5, 5, 5]);
    expect(cuttings('2A')).toEqual([1, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 7]);
    const units = (grade: string): (number | undefined)[] =>
      [1, 2, 3, 4].map((measure) => counted(ways(grade, measure)[0])?.units);
    expect(units('1C')).toEqual([none, 18, 24, 32]);
    expect(units('2A')).toEqual([8, 12, 18, 24]);
  });

  it('lets Selects of 2 and 3 ft SM be clear or 11/12 clear in one cutting', () => {
    const rule = faceRules.get('small Selects')!;
    for (const measure of [2, 3]) {
      const board = { surfaceMeasure: measure, length: inFeet(6), width: inInches(4) };
      const small = waysToMake(rule, board);
      expect(small[0]).toEqual({ kind: 'clear face' });
      expect(counted(small[1])).toEqual({ atMost: 1, units: 11 * measure });
    }
  });
});

describe('least sizes', () => {
  it.each(casesOf('grade_min_board'))('of a board: %s', (_title, { given, expect: asked }) => {
    const least = leastBoard.get(textIn(given, 'grade') as Grade)!;
    expect(least.width / ticksPerInch).toBe(asked['min_width_in']);
    expect(least.length / (12 * ticksPerInch)).toBe(asked['min_length_ft']);
  });

  it.each(casesOf('grade_min_cutting'))('of a cutting: %s', (_title, { given, expect: asked }) => {
    const { leastSizes } = faceRules.get(textIn(given, 'grade') as RuledGrade)!.cutting;
    const sizes = leastSizes.map(({ width, length }) => [width / ticksPerInch, length / (12 * ticksPerInch)]);
    expect(sizes).toEqual(asked['min_cuttings_in_by_ft']);
  });
});

describe('cutting units', () => {
  const units = ([width, feet]: readonly number[]): number => cuttingUnits(inInches(width!) * inFeet(feet!));

  it.each(casesOf('cutting_units'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const found = units([numberIn(given, 'width_in'), numberIn(given, 'length_ft')]);
    expect(Math.abs(found - numberIn(asked, 'units'))).toBeLessThanOrEqual(tolerance);
  });

  const examples = casesOf('grade_example').filter(([, { given }]) => 'trial_grade' in given);
  it.each(examples)('worked example: %s', (_title, published: PublishedCase) => {
    const { given, expect: asked, tolerance } = published;
    const [width, feet] = [numberIn(given, 'width_in'), numberIn(given, 'length_ft')];
    const measure = surfaceMeasure(ticks(inFeet(feet)), ticks(inInches(width)));
    if ('surface_measure' in asked) expect(measure).toBe(asked['surface_measure']);
    const found = ways(textIn(given, 'trial_grade'), measure, feet, width);
    const [standard, extra] = [counted(found[0])!, counted(found[1])];
    expect(standard.atMost).toBe(asked['max_cuttings']);
    expect(standard.units).toBe(asked['required_units']);
    if ('units_with_extra_cutting' in asked) expect(extra?.units).toBe(asked['units_with_extra_cutting']);
    const drawn = given['cuttings_in_by_ft'] as readonly (readonly number[])[] | undefined;
    if (drawn === undefined) return;
    const total = drawn.reduce((sum, cutting) => sum + units(cutting), 0);
    if ('total_units' in asked)
      expect(Math.abs(total - numberIn(asked, 'total_units'))).toBeLessThanOrEqual(tolerance);
    const meets = [standard, extra].some(
      (way) => way !== undefined && drawn.length <= way.atMost && total >= way.units,
    );
    expect(meets).toBe(asked['meets']);
  });
});
