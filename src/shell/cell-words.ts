import { formatLengthWithUnit, unreachable } from '../index.ts';
import type { Doubt, ReadProblem } from './read/problem.ts';
import { quoted } from './wording.ts';

/** What is wrong, and what would mend it. */
export interface Said {
  readonly words: string;
  readonly mend: string;
}

/** Why a cell is no length. */
export function sayNoLength({
  label,
  text,
  why,
  unit,
}: Extract<ReadProblem, { readonly kind: 'no length' }>): Said {
  const bare = `a bare number is in ${unit === 'in' ? 'inches' : 'millimetres'}`;
  const written = `${label}: ${quoted(text)}`;
  switch (why) {
    case 'unreadable':
      return {
        words: `${written} is no length`,
        mend: `write it like 63 1/2, 63.5, 5' 3 1/2" or 1612.9 mm; ${bare}`,
      };
    case 'decimal comma':
      return {
        words: `${written} has a comma`,
        mend: 'write 63.5, or separate the cells of the whole file by semicolons',
      };
    case 'date':
      return {
        words: `${written} is a date, not a length`,
        mend: 'a spreadsheet took a fraction for a date: write 3/4 in, or 0.75',
      };
    case 'zero denominator':
      return { words: `${written} divides by zero`, mend: 'correct the fraction' };
    case 'too long':
      return { words: `${written} is longer than 10,000 inches (254 m)`, mend: `check the unit; ${bare}` };
    default:
      return unreachable(why);
  }
}

/** Why an entry is questioned, to stand after it. */
export function doubtWords(doubt: Doubt): string {
  switch (doubt.why) {
    case 'run together':
      return `is an improper fraction: is ${doubt.meant} meant?`;
    case 'more than':
      return `is more than ${formatLengthWithUnit(doubt.most, doubt.style)}`;
    case 'wider than long':
      return 'makes the board wider than it is long';
    case 'all too small':
      return `and all other boards are too small to cut from: are ${doubt.unit === 'mm' ? 'millimetres' : 'inches'} meant?`;
    case 'split':
      return 'stands alone as a note: did a decimal comma part a number of this row?';
    default:
      return unreachable(doubt);
  }
}

/** What to do about it. */
export function mendOfDoubt(doubt: Doubt): string {
  switch (doubt.why) {
    case 'run together':
      return `write ${doubt.meant} with a blank; or, if it is meant, as a whole number and a fraction`;
    case 'more than':
      return `check the number and the unit: a bare number is in ${doubt.style.units === 'mm' ? 'millimetres' : 'inches'}`;
    case 'wider than long':
      return 'length runs along the grain: if it is the width, change the two about';
    case 'all too small':
      return 'set units in shop.csv, or write the unit with each size';
    case 'split':
      return 'write 58.25 for 58,25; or separate the cells of the whole file by semicolons';
    default:
      return unreachable(doubt);
  }
}
