import { describe, expect, it } from 'vitest';
import { printExcerpt } from '../../src/shell/print-excerpt.ts';

function excerpt(line: string, column: number, length: number): string[] {
  return (printExcerpt({ file: 'a.csv', line: 7, column, excerpt: { line, length } }) ?? '').split('\n');
}

describe('the underlined line', () => {
  it('as in the style guide', () => {
    expect(excerpt('B3,90,6 1/2,knot,84,98', 21, 2)).toEqual([
      '  7 | B3,90,6 1/2,knot,84,98',
      '    |                     ^^',
    ]);
  });

  it('nothing for a place without its line', () => {
    expect(printExcerpt({ file: 'a.csv', line: 1, column: 1 })).toBeNull();
  });

  it('counts the columns of wide signs, and none of accents', () => {
    expect(excerpt('漢字,e\u0301,x', 6, 1)).toEqual(['  7 | 漢字,e\u0301,x', '    |       ^']);
    expect(excerpt('a,漢字,b', 3, 2)).toEqual(['  7 | a,漢字,b', '    |   ^^^^']);
    expect(excerpt('👩‍👩‍👧,x', 7, 1)).toEqual(['  7 | 👩‍👩‍👧,x', '    |    ^']);
  });

  it('one mark where the line ends before the place', () => {
    expect(excerpt('a,', 3, 1)).toEqual(['  7 | a,', '    |   ^']);
    expect(excerpt('', 1, 1)).toEqual(['  7 | ', '    | ^']);
  });

  it('cuts a long line on both sides of the place', () => {
    const [shown, marked] = excerpt(`${'a'.repeat(5000)},bad,${'z'.repeat(5000)}`, 5002, 3);
    expect(shown).toBe(`  7 | …${'a'.repeat(39)},bad,${'z'.repeat(52)}…`);
    expect(marked).toBe(`    | ${' '.repeat(41)}^^^`);
  });

  it('underlines a cell longer than the room for it as far as it is shown', () => {
    const [shown, marked] = excerpt(`a,${'b'.repeat(1_000_000)}`, 3, 1_000_000);
    expect(shown).toBe(`  7 | a,${'b'.repeat(94)}…`);
    expect(marked).toBe(`    |   ${'^'.repeat(94)}`);
  });

  it('leaves nothing that steers a terminal', () => {
    expect(excerpt('a\u001B[2J\tb', 7, 1)).toEqual(['  7 | a\uFFFD[2J b', '    |       ^']);
  });
});
