import type { Field, NamedTable } from './named-table.ts';

/** Something with an area, so many times. */
interface Copies {
  readonly quantity: number;
  readonly length: number;
  readonly width: number;
}

/**
 * Watches that all areas of a file together stay exact whole numbers: 2^53 square ticks, some 940,000 square feet.
 * Reports once, at the row that goes too far.
 */
export function totalArea(what: 'parts' | 'boards'): {
  add: (named: NamedTable, field: Field, copies: Copies) => void;
} {
  let sum = 0;
  return {
    add: (named, field, { quantity, length, width }) => {
      const before = sum;
      sum += quantity * length * width;
      if (before <= Number.MAX_SAFE_INTEGER && sum > Number.MAX_SAFE_INTEGER)
        named.problems.push({ kind: 'too much', at: field.at(), what });
    },
  };
}
