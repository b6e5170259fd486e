import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLength, formatLengthWithUnit } from '../../../src/base/units/format-length.ts';
import { readLength } from '../../../src/base/units/read-length.ts';
import { longestLength, ticks, ticksPerInch } from '../../../src/base/units/tick.ts';
import { writeLength } from '../../../src/base/units/write-length.ts';

const unit = fc.constantFrom('in', 'mm');
const side = fc.constantFrom('up', 'down', 'nearest');
const printFraction = fc.constantFrom(1, 2, 4, 8, 16, 32, 64);
const length = fc
  .oneof(
    fc.integer({ min: -longestLength, max: longestLength }),
    fc.integer({ min: -2000, max: 2000 }),
    fc.integer({ min: -640_000, max: 640_000 }).map((sixtyFourths) => sixtyFourths * 127),
    fc.integer({ min: -2_540_000, max: 2_540_000 }).map((tenths) => tenths * 32),
  )
  .map(ticks);

describe('laws of lengths', () => {
  it('what is written for a file reads back as the same length', () => {
    fc.assert(
      fc.property(length, unit, side, (size, inUnit, round) => {
        const text = writeLength(size, inUnit, round);
        expect(readLength(text, { unit: inUnit, decimalComma: false, round })).toEqual({
          ok: true,
          value: size,
        });
        expect(text.length).toBeLessThan(16);
      }),
      { numRuns: 2000 },
    );
  });

  it('what is printed reads back as the nearest step, and as itself when no ~ stands in front', () => {
    fc.assert(
      fc.property(length, unit, printFraction, (size, units, fraction) => {
        const text = formatLengthWithUnit(size, { units, printFraction: fraction });
        const back = readLength(text.replace('~', ''), { unit: 'in', decimalComma: false, round: 'nearest' });
        if (!back.ok) throw new Error(text);
        const step = units === 'mm' ? 32 : ticksPerInch / fraction;
        expect(Math.abs(back.value - size)).toBeLessThanOrEqual(step / 2 + 0.5);
        expect(text.startsWith('~')).toBe(size % step !== 0);
        if (!text.startsWith('~')) expect(back.value).toBe(size);
      }),
      { numRuns: 2000 },
    );
  });

  it('up is never below down, and they differ by one tick at most', () => {
    const whole = fc.nat(9000);
    fc.assert(
      fc.property(whole, fc.nat(500), fc.integer({ min: 1, max: 500 }), (inches, top, bottom) => {
        const read = (round: 'up' | 'down'): number => {
          const result = readLength(`${inches} ${top}/${bottom}`, { unit: 'in', decimalComma: false, round });
          return result.ok ? result.value : Number.NaN;
        };
        const exact = inches * ticksPerInch * bottom + top * ticksPerInch;
        expect(read('up')).toBe(Math.ceil(exact / bottom));
        expect(read('down')).toBe(Math.floor(exact / bottom));
      }),
    );
  });

  it('no text throws', () => {
    const hostile = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.string({ unit: fc.constantFrom(...'0123456789 -/.,\'"½⅟¹⁄₂ftinmc′”−') }),
    );
    fc.assert(
      fc.property(hostile, unit, side, fc.boolean(), (text, inUnit, round, decimalComma) => {
        const result = readLength(text, { unit: inUnit, decimalComma, round });
        if (result.ok) expect(Number.isSafeInteger(result.value)).toBe(true);
        else expect(result.problems).toHaveLength(1);
      }),
      { numRuns: 3000 },
    );
  });
});

describe('printing by hand', () => {
  const style = (units: 'in' | 'mm', fraction = 32): { units: 'in' | 'mm'; printFraction: number } => ({
    units,
    printFraction: fraction,
  });
  it.each([
    [516128, style('in'), '63 1/2'],
    [0, style('in'), '0'],
    [127, style('in', 64), '1/64'],
    [127, style('in'), '~1/32'],
    [126, style('in'), '~0'],
    [-126, style('in'), '~0'],
    [-4064, style('in'), '-1/2'],
    [8127, style('in'), '~1'],
    [516128, style('mm'), '1612.9'],
    [516144, style('mm'), '~1613'],
    [320000, style('mm'), '1000'],
    [2710, style('in'), '~11/32'],
  ])('%d ticks', (size, how, text) => {
    expect(formatLength(ticks(size), how)).toBe(text);
  });

  it('with the unit', () => {
    expect(formatLengthWithUnit(ticks(516128), style('in'))).toBe('63 1/2"');
    expect(formatLengthWithUnit(ticks(516128), style('mm'))).toBe('1612.9 mm');
  });
});

describe('writing by hand', () => {
  it.each([
    [516128, 'in', 'up', '63 1/2'],
    [6096, 'in', 'up', '3/4 in'],
    [-6096, 'in', 'up', '-3/4 in'],
    [516128, 'mm', 'up', '1612.9'],
    // 63.7 in = 517753.6 ticks, which a part rounds up and a board down.
    [517754, 'in', 'up', '63.7'],
    [517753, 'in', 'down', '63.7'],
    [517754, 'in', 'nearest', '63.7'],
  ] as const)('%d ticks in %s, %s', (size, inUnit, round, text) => {
    expect(writeLength(ticks(size), inUnit, round)).toBe(text);
  });
});
