import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { isolate, shorten } from '../../../src/base/markup/shorten.ts';
import { textWidth } from '../../../src/base/markup/text-width.ts';

describe('shorten', () => {
  it('keeps short text, folds white space, ends long text in an ellipsis', () => {
    expect(shorten('  Shelf \n\t 2 ', 20)).toBe('Shelf 2');
    expect(shorten('Front panel of the mantel', 12)).toBe('Front panel…');
    expect(shorten('x'.repeat(10_000), 20)).toBe(`${'x'.repeat(19)}…`);
  });

  it('cuts neither before an accent nor inside a joined emoji', () => {
    expect(shorten('abce\u0301fgh', 5)).toBe('abc…');
    expect(shorten('ab\u{1F469}\u200D\u{1F527}cdef', 5)).toBe('ab…');
  });

  it('never gives more than asked, whatever the text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.integer({ min: 2, max: 30 }), (text, most) => {
        expect(Array.from(shorten(text, most)).length).toBeLessThanOrEqual(most);
      }),
    );
  });
});

describe('isolate', () => {
  it('wraps right-to-left text only, and drops stray isolates', () => {
    expect(isolate('Shelf')).toBe('Shelf');
    expect(isolate('מדף 2')).toBe('\u2068מדף 2\u2069');
    expect(isolate('a\u2069b\u2066')).toBe('ab');
  });
});

describe('textWidth', () => {
  it('adds the advance widths of the metric-compatible face', () => {
    // 6, 0, space, 1, slash, 2: 4 × 556 + 2 × 278 = 2780 thousandths
    expect(textWidth('60 1/2', 1000, false)).toBe(2780);
    expect(textWidth('60 1/2', 20, false)).toBe(56);
    expect(textWidth('i', 1000, true)).toBe(278);
  });

  it('gives accents no room and pictures more than a letter', () => {
    expect(textWidth('e\u0301', 1000, false)).toBe(textWidth('e', 1000, false));
    expect(textWidth('\u{1F600}', 1000, false)).toBeGreaterThan(1000);
  });
});
