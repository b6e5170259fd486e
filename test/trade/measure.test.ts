import { describe, expect, it } from 'vitest';
import { inches, ticks, ticksPerInch } from '../../src/base/units/tick.ts';
import {
  boardFeet,
  solidBoardFeet,
  surfaceMeasure,
  surfaceMeasures,
  talliedBoardFeet,
} from '../../src/trade/board-feet.ts';
import { type PublishedCase, casesOf, numberIn } from './published.ts';

/** A published size in inches as ticks, to the nearest. */
const sized = (value: number): ReturnType<typeof ticks> => ticks(Math.round(value * ticksPerInch));
const lengthAndWidth = ({ given }: PublishedCase) =>
  [sized(numberIn(given, 'length_ft') * 12), sized(numberIn(given, 'width_in'))] as const;

describe('board feet by volume', () => {
  it.each(casesOf('board_feet_exact'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const [length, width] = [sized(numberIn(given, 'length_in')), sized(numberIn(given, 'width_in'))];
    const feet = boardFeet(length, width, numberIn(given, 'thickness_in'));
    expect(Math.abs(feet - numberIn(asked, 'board_feet'))).toBeLessThanOrEqual(tolerance);
  });

  it('counts thin stock as 1 in, but weighs it as it is', () => {
    expect(boardFeet(inches(96), inches(10), 0.75)).toBe(boardFeet(inches(96), inches(10), 1));
    expect(solidBoardFeet(inches(96), inches(10), inches(0.75))).toBe(5);
  });
});

describe('surface measure', () => {
  it.each(casesOf('surface_measure'))('%s', (_title, published) => {
    const [length, width] = lengthAndWidth(published);
    const anyOf = published.expect['surface_measure_any_of'];
    if (Array.isArray(anyOf)) {
      expect([surfaceMeasure(length, width, 'down'), surfaceMeasure(length, width, 'up')]).toEqual(anyOf);
    } else {
      const asked = numberIn(published.expect, 'surface_measure');
      expect(surfaceMeasure(length, width, 'down')).toBe(asked);
      expect(surfaceMeasure(length, width, 'up')).toBe(asked);
    }
  });

  it.each(casesOf('board_feet_from_surface_measure'))('board feet: %s', (_title, published) => {
    const measure = surfaceMeasure(...lengthAndWidth(published));
    const feet = talliedBoardFeet([measure], numberIn(published.given, 'nominal_thickness_in'));
    expect(feet).toBe(numberIn(published.expect, 'board_feet'));
  });

  it.each(casesOf('board_feet_bundle'))('of a bundle: %s', (_title, { given, expect: asked }) => {
    const boards = given['boards'] as readonly { width_in: number; length_ft: number }[];
    const measures = surfaceMeasures(
      boards.map(({ length_ft, width_in }) => ({ length: sized(length_ft * 12), width: sized(width_in) })),
    );
    expect(measures.reduce((sum, measure) => sum + measure, 0)).toBe(asked['surface_measure_total']);
    const feet = talliedBoardFeet(measures, numberIn(given, 'nominal_thickness_in'));
    expect(feet).toBe(asked['board_feet']);
    expect(asked['board_feet_rounded_any_of']).toContain(Math.round(feet));
  });

  it('takes exact halves down and up by turns, as King (1911) has it', () => {
    const half = { length: inches(108), width: inches(6) };
    const whole = { length: inches(96), width: inches(6) };
    expect(surfaceMeasures([half, whole, half, half])).toEqual([4, 4, 5, 4]);
  });

  it('knows an exact half from a hair beside it', () => {
    expect(surfaceMeasure(inches(108), ticks(6 * ticksPerInch - 1), 'up')).toBe(4);
    expect(surfaceMeasure(inches(108), ticks(6 * ticksPerInch + 1), 'down')).toBe(5);
  });
});
