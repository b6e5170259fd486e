import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sanitiseFileName } from '../../../src/shell/write/file-name.ts';

describe('file names by hand', () => {
  const none: ReadonlySet<string> = new Set();
  it.each([
    ['B3', 'B3'],
    ['../x', 'x'],
    ['..', 'unnamed'],
    ['', 'unnamed'],
    ['.hidden', 'hidden'],
    ['-rf', 'rf'],
    ['a/b\\c:d', 'a-b-c-d'],
    ['con', 'con-'],
    ['CON.svg', 'CON-.svg'],
    ['com1', 'com1-'],
    ['console', 'console'],
    ['a\u0000\u001B[31mb', 'a-[31mb'],
    ['a\u202Eb', 'a-b'],
    ['正面 😀', '正面 😀'],
    ['e\u0301', 'é'],
    ['trailing. ', 'trailing'],
    ['<b>', '-b'.slice(1)],
    ['__proto__', '__proto__'],
    ['=1+1', '=1+1'],
  ])('%j becomes %j', (text, name) => {
    expect(sanitiseFileName(text, none)).toBe(name);
  });

  it('tells apart what some disk would not', () => {
    expect(sanitiseFileName('b3', new Set(['B3']))).toBe('b3-2');
    expect(sanitiseFileName('B3', new Set(['B3', 'B3-2']))).toBe('B3-3');
    const long = 'x'.repeat(10_000);
    const first = sanitiseFileName(long, none);
    expect(sanitiseFileName(long, new Set([first]))).toBe(`${'x'.repeat(78)}-2`);
  });
});

describe('laws of file names', () => {
  it('any text gives a name that every system takes', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 200 }),
      fc.string({ unit: fc.constantFrom(...'./\\:-_ acnoNUL1\u0000😀'), maxLength: 20 }),
    );
    fc.assert(
      fc.property(fc.array(text, { maxLength: 8 }), (texts) => {
        const taken = new Set<string>();
        for (const one of texts) {
          const name = sanitiseFileName(one, taken);
          expect(name).toMatch(/^[^./\\: -][^/\\:*?"<>|\p{Control}]*$/u);
          expect(name).not.toMatch(/[. ]$|^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i);
          expect(Array.from(name).length).toBeLessThanOrEqual(80);
          expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(200);
          expect([...taken].map((other) => other.toLowerCase())).not.toContain(name.toLowerCase());
          taken.add(name);
        }
      }),
      { numRuns: 120 },
    );
  });
});
