import { describe, expect, it } from 'vitest';
import { ticks, ticksPerInch } from '../../src/base/units/tick.ts';
import { leastDistance, leastDistanceNfpa, mostProjection } from '../../src/trade/clearance.ts';
import {
  type Fastener,
  allowableWithdrawal,
  lagInEndGrain,
  leastPenetration,
  ultimateWithdrawal,
} from '../../src/trade/fasteners.ts';
import { bevelKerf, miterGain, nestedBevelWidth, sawSetting, ticksUp } from '../../src/trade/miter.ts';
import { addPercent, divideByYield, lostShare } from '../../src/trade/purchase.ts';
import { kerfs, shortestWorkpieces } from '../../src/trade/saw.ts';
import { casesOf, numberIn, textIn } from './published.ts';

const near = (got: number, asked: number, tolerance: number): void =>
  expect(Math.abs(got - asked)).toBeLessThanOrEqual(tolerance + 1e-9);

describe('clearance', () => {
  it.each(casesOf('mantel_clearance_irc'))('%s', (_title, { given, expect: asked }) => {
    expect(mostProjection(numberIn(given, 'distance_from_opening_in'))).toBe(asked['max_projection_in']);
  });
  it.each(casesOf('mantel_clearance_irc_inverse'))('%s', (_title, { given, expect: asked }) => {
    expect(leastDistance(numberIn(given, 'projection_in'))).toEqual({
      inches: asked['min_distance_in'],
      beyond: asked['strictly_greater'],
    });
  });
  it.each(casesOf('mantel_clearance_nfpa211'))('%s', (_title, { given, expect: asked }) => {
    const where = given['location'] === 'side' ? 'beside' : 'above';
    expect(leastDistanceNfpa(where, numberIn(given, 'projection_in'))).toBe(asked['min_distance_in']);
  });
});

describe('miters', () => {
  it.each(casesOf('miter_angle'))('%s', (_title, { given, expect: asked }) => {
    const setting = sawSetting(180 - numberIn(given, 'corner_deg'));
    expect(setting).toBe(asked['saw_setting_deg_from_square']);
    expect(90 - setting).toBe(asked['miter_deg_from_face']);
  });
  it.each(casesOf('miter_allowance'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const setting = sawSetting(180 - numberIn(given, 'corner_deg'));
    near(
      miterGain(numberIn(given, 'thickness_in'), setting),
      numberIn(asked, 'long_minus_short_per_end_in'),
      tolerance,
    );
  });
  it.each(casesOf('miter_face_lengths'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const gain = miterGain(numberIn(given, 'thickness_in'), sawSetting(180 - numberIn(given, 'corner_deg')));
    const short = numberIn(given, 'overall_long_point_in') - numberIn(given, 'mitered_ends') * gain;
    near(short, numberIn(asked, 'short_point_in'), tolerance);
  });
  it.each(casesOf('bevel_kerf_on_face'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const kerf = bevelKerf(ticks(numberIn(given, 'kerf_in') * ticksPerInch), numberIn(given, 'bevel_deg'));
    near(kerf / ticksPerInch, numberIn(asked, 'face_width_consumed_in'), tolerance + 1 / ticksPerInch);
  });
  it.each(casesOf('bevel_nesting'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const [first = 0, second = 0] = given['long_widths_in'] as number[];
    const [thickness, kerf] = [numberIn(given, 'thickness_in'), numberIn(given, 'kerf_in')];
    const width = nestedBevelWidth([first, second], thickness, kerf, numberIn(given, 'bevel_deg'));
    near(width, numberIn(asked, 'board_width_needed_in'), tolerance);
  });
  it('a bevel kerf never shrinks, and a square one is the kerf', () => {
    const kerf = ticks(1016);
    expect(bevelKerf(kerf, 0)).toBe(1016);
    expect(bevelKerf(kerf, 45)).toBe(1437);
    expect(bevelKerf(kerf, -45)).toBe(1437);
    expect(bevelKerf(kerf, 60)).toBe(2032);
    expect(() => bevelKerf(kerf, 90)).toThrow(RangeError);
    expect(() => bevelKerf(kerf, NaN)).toThrow(RangeError);
  });
  it('rounds up, but not for the last bits of a sine', () => {
    expect(ticksUp(Math.tan(Math.PI / 4) * 6096)).toBe(6096);
    expect(ticksUp(6096.0000001)).toBe(6096);
    expect(ticksUp(6096.001)).toBe(6097);
    expect(ticksUp(0)).toBe(0);
    expect(bevelKerf(ticks(0), 45)).toBe(0);
  });
});

describe('fasteners', () => {
  it.each(casesOf('fastener_withdrawal'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const kind = textIn(given, 'kind');
    const metric = kind.endsWith('metric');
    const fastener: Fastener = kind.startsWith('lag')
      ? 'lag screw'
      : kind.startsWith('nail')
        ? 'nail'
        : 'wood screw';
    const diameter = metric ? numberIn(given, 'D_mm') / 25.4 : numberIn(given, 'D_in');
    const length = metric ? numberIn(given, 'L_mm') / 25.4 : numberIn(given, 'L_in');
    const load = kind.includes('ultimate') ? ultimateWithdrawal : allowableWithdrawal;
    const pounds =
      load(fastener, numberIn(given, 'G'), diameter, length) *
      (kind.endsWith('end_grain') ? lagInEndGrain : 1);
    const got = metric ? pounds * 4.4482216 : pounds;
    near(got, numberIn(asked, metric ? 'load_N' : 'load_lb'), tolerance);
  });
  it.each(casesOf('fastener_min_penetration'))('%s', (_title, { given, expect: asked, tolerance }) => {
    const kind = textIn(given, 'kind');
    const fastener: Fastener = kind.startsWith('lag') ? 'lag screw' : kind === 'nail' ? 'nail' : 'wood screw';
    near(
      leastPenetration(fastener, numberIn(given, 'D_in')),
      numberIn(asked, 'min_penetration_in'),
      tolerance,
    );
  });
});

describe('buying and sawing', () => {
  it.each(casesOf('purchase_allowance'))('%s', (_title, { given, expect: asked, tolerance }) => {
    if ('add_percent' in given) {
      near(
        lostShare(numberIn(given, 'add_percent')),
        numberIn(asked, 'waste_fraction_of_purchase'),
        tolerance,
      );
      return;
    }
    const buy = given['method'] === 'add_percent' ? addPercent : divideByYield;
    near(
      buy(numberIn(given, 'net_board_feet'), numberIn(given, 'rate')),
      numberIn(asked, 'buy_board_feet'),
      tolerance,
    );
  });
  it.each(casesOf('kerf'))('%s', (_title, { given, expect: asked }) => {
    expect(new Map<string, number>(Object.entries(kerfs)).get(textIn(given, 'kind'))).toBe(asked['kerf_in']);
  });
  it.each(casesOf('minimum_workpiece'))('%s', (_title, { given, expect: asked }) => {
    expect(shortestWorkpieces.find(({ rule }) => rule === given['rule'])?.inches).toBe(asked['inches']);
  });
});
