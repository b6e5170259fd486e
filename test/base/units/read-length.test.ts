import { describe, expect, it } from 'vitest';
import { type LengthFault, type LengthReading, readLength } from '../../../src/base/units/read-length.ts';
import { ticksPerInch } from '../../../src/base/units/tick.ts';

const inInches: LengthReading = Object.freeze({ unit: 'in', decimalComma: false, round: 'nearest' });
const inMillimetres: LengthReading = Object.freeze({ unit: 'mm', decimalComma: false, round: 'nearest' });
const withCommas: LengthReading = Object.freeze({ unit: 'in', decimalComma: true, round: 'nearest' });

function read(text: string, reading: LengthReading): number | LengthFault {
  const length = readLength(text, reading);
  return length.ok ? length.value : length.problems[0]!.kind;
}

describe('lengths in an inch job', () => {
  // By hand: 63 1/2 in = 63.5 × 8128 = 516128 ticks = 1612.9 mm × 320.
  const sixtyThreeAndAHalf = 516128;
  it.each([
    '63 1/2',
    '63-1/2',
    '63½',
    '63 ½',
    '63-½',
    '63–1/2',
    '63.5',
    '63.50',
    '63 2/4',
    '127/2',
    ' 63 1/2 ',
    '63\u00A01/2',
    '63 1\u20442',
    '63¹⁄₂',
    '63 1/2"',
    '63 1/2″',
    '63 1/2”',
    "63 1/2''",
    '63.5 in',
    '63.5in.',
    '63.5 inches',
    '63 1/2 Inch',
    `5' 3 1/2"`,
    `5'3 1/2"`,
    `5'-3 1/2"`,
    `5' - 3 1/2"`,
    `5' 3½"`,
    '5′ 3 1/2″',
    '5’ 3 1/2”',
    "5' 3 1/2",
    '5 ft 3 1/2 in',
    '5 feet 3.5 inches',
    '5ft. 3.5in.',
    `4' 15 1/2"`,
    '1612.9 mm',
    '1612.9mm',
    '161.29 cm',
    '1.6129 m',
    '1612.900 MM',
  ])('%s', (text) => {
    expect(read(text, inInches)).toBe(sixtyThreeAndAHalf);
  });

  it.each([
    ['3 in', 24384],
    ['0', 0],
    ['.5', 4064],
    ['5.', 40640],
    ["5'", 487680],
    ["5 1/2'", 536448],
    ['1/64', 127],
    ['0.1 mm', 32],
    ['-22.5', -182880],
    ['- 1/2', -4064],
    ['-½', -4064],
    ['−3 1/2', -28448],
  ])('%s is %d ticks', (text, length) => {
    expect(read(text, inInches)).toBe(length);
  });

  // Every vulgar fraction of Unicode (blocks Latin-1 Supplement and Number Forms), as numerator and denominator.
  it.each([
    ['¼', 1, 4],
    ['½', 1, 2],
    ['¾', 3, 4],
    ['⅐', 1, 7],
    ['⅑', 1, 9],
    ['⅒', 1, 10],
    ['⅓', 1, 3],
    ['⅔', 2, 3],
    ['⅕', 1, 5],
    ['⅖', 2, 5],
    ['⅗', 3, 5],
    ['⅘', 4, 5],
    ['⅙', 1, 6],
    ['⅚', 5, 6],
    ['⅛', 1, 8],
    ['⅜', 3, 8],
    ['⅝', 5, 8],
    ['⅞', 7, 8],
    ['↉', 0, 3],
    ['⅟16', 1, 16],
  ])('2%s', (sign, top, bottom) => {
    expect(read(`2${sign}`, inInches)).toBe(Math.round((2 + top / bottom) * ticksPerInch));
    expect(read(sign, inInches)).toBe(Math.round((top / bottom) * ticksPerInch));
  });
});

describe('the bare number', () => {
  it('is in the unit of the job', () => {
    expect(read('1612.9', inMillimetres)).toBe(516128);
    expect(read('63.5 in', inMillimetres)).toBe(516128);
    expect(read(`5' 3 1/2"`, inMillimetres)).toBe(516128);
  });
});

describe('the decimal comma', () => {
  it('is read only where the file uses it', () => {
    expect(read('63,5', withCommas)).toBe(516128);
    expect(read('63.5', withCommas)).toBe(516128);
    expect(read('161,29 cm', withCommas)).toBe(516128);
    expect(read('63,5', inInches)).toBe('decimal comma');
    expect(read('1,250', inInches)).toBe('decimal comma');
    expect(read('1.250,5', withCommas)).toBe('unreadable');
    expect(read('1,2,3', withCommas)).toBe('unreadable');
  });
});

describe('rounding', () => {
  // 1/3 in = 2709 1/3 ticks; 1/7 mm = 45 5/7 ticks.
  it.each([
    ['1/3', 'down', 2709],
    ['1/3', 'nearest', 2709],
    ['1/3', 'up', 2710],
    ['-1/3', 'down', -2710],
    ['-1/3', 'up', -2709],
    ['1/7 mm', 'down', 45],
    ['1/7 mm', 'nearest', 46],
    ['1/7 mm', 'up', 46],
    ['1/2', 'up', 4064],
    ['1/2', 'down', 4064],
  ] as const)('%s %s', (text, round, expected) => {
    expect(read(text, { ...inInches, round })).toBe(expected);
  });
});

describe('what is no length', () => {
  it.each<[string, LengthFault]>([
    ['', 'empty'],
    [' \t', 'empty'],
    ['about 6', 'unreadable'],
    ['63 1/2 1/4', 'unreadable'],
    ['63 - 1/2', 'unreadable'],
    ['6x4', 'unreadable'],
    ['3 furlongs', 'unreadable'],
    ['1e3', 'unreadable'],
    ['.', 'unreadable'],
    ['-', 'unreadable'],
    ['"', 'unreadable'],
    ['--5', 'unreadable'],
    ['NaN', 'unreadable'],
    ['constructor', 'unreadable'],
    ['٣', 'unreadable'],
    ['9'.repeat(10_000), 'unreadable'],
    ['1/0', 'zero denominator'],
    ['5 1/0"', 'zero denominator'],
    [`5' 1/0"`, 'zero denominator'],
    ['10001', 'too long'],
    ['-10001', 'too long'],
    ['9'.repeat(50), 'too long'],
    ['3-Apr', 'date'],
    ['Apr-63', 'date'],
    ['4. Apr', 'date'],
    ['03.04.', 'date'],
    ['2025-04-03', 'date'],
    ['3/4/2025', 'date'],
  ])('%s', (text, fault) => {
    expect(read(text, inInches)).toBe(fault);
  });

  it('the longest length is still one', () => {
    expect(read('10000', inInches)).toBe(10_000 * ticksPerInch);
  });
});
