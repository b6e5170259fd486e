import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestName } from '../../../src/base/text/nearest-name.ts';
import { seenCharacters, withoutControls } from '../../../src/base/text/terminal-width.ts';

describe('the nearest name', () => {
  const columns = Object.freeze([
    'part',
    'quantity',
    'length',
    'width',
    'thickness',
    'left end',
    'right end',
  ]);
  it.each([
    ['lenght', 'length'],
    ['LENGTH', 'length'],
    ['len', 'length'],
    ['qty', 'quantity'],
    ['thk', 'thickness'],
    ['end', 'left end'],
    ['wdith', 'width'],
    ['leftend', 'left end'],
    ['thicknes', 'thickness'],
    ['', 'part'],
    ['x'.repeat(10_000), 'part'],
  ])('%s: %s', (written, nearest) => {
    expect(nearestName(written, columns)?.name).toBe(nearest);
  });

  it('a swap is one slip, not two', () => {
    expect(nearestName('ab', ['xyb', 'ba'])).toEqual({ name: 'ba', slips: 1 });
    expect(nearestName('abcd', ['abxy', 'abdc'])).toEqual({ name: 'abdc', slips: 1 });
  });

  it('a known name is nearest to itself', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(
          fc.string({ maxLength: 12 }).map((name) => name.toLowerCase()),
          { minLength: 1 },
        ),
        (names) => {
          for (const name of names) expect(nearestName(name, names)).toEqual({ name, slips: 0 });
        },
      ),
    );
  });
});

describe('columns of a terminal', () => {
  it.each([
    ['abc', 3],
    ['漢字', 4],
    ['e\u0301', 1],
    ['😀', 2],
    ['👩‍👩‍👧', 2],
    ['🇨🇭', 2],
    ['❤️', 2],
    ['ｆ', 2],
    ['½″', 2],
    ['\u0301', 0],
  ])('%s takes %d', (text, columns) => {
    expect(seenCharacters(text).reduce((sum, seen) => sum + seen.columns, 0)).toBe(columns);
  });
});

describe('text that steers nothing', () => {
  it('replaces one for one', () => {
    expect(withoutControls('a\u001B[31m\tb\u202E\r\n')).toBe('a\uFFFD[31m b\uFFFD\uFFFD\uFFFD');
  });

  it('keeps the count of characters, and leaves nothing that steers', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const safe = withoutControls(text);
        expect(Array.from(safe)).toHaveLength(Array.from(text).length);
        expect(safe).not.toMatch(/\p{Control}/u);
      }),
    );
  });
});
