import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberFor, openNumbering } from '../../../src/flow/patterns/strip/numbering.ts';

const lists = fc.array(fc.array(fc.integer({ min: -3, max: 3 }), { maxLength: 4 }), { maxLength: 200 });

describe('numbers of lists', () => {
  it('are the same for equal lists alone, in the order in which these turned up', () => {
    fc.assert(
      fc.property(lists, (given) => {
        const numbering = openNumbering();
        const known: string[] = [];
        for (const list of given) {
          const key = list.join();
          if (!known.includes(key)) known.push(key);
          expect(numberFor(numbering, list)).toBe(known.indexOf(key));
        }
        known.forEach((key, number) => {
          const { lists: all, from } = numbering;
          expect(all.slice(from[number], from[number + 1]).join()).toBe(key);
        });
      }),
    );
  });

  it('tell lists apart that share a hash', () => {
    const numbering = openNumbering();
    // With every hash known to lead to list 0, only the lists themselves can tell.
    numberFor(numbering, [7]);
    for (const list of [[8], [9]]) {
      const hash = [...openHashOf(list)][0]!;
      numbering.byHash.set(hash, 0);
    }
    expect([numberFor(numbering, [8]), numberFor(numbering, [9]), numberFor(numbering, [8])]).toEqual([
      1, 2, 1,
    ]);
  });
});

/** The hashes under which a numbering of its own keeps the list. */
function openHashOf(list: readonly number[]): Iterable<number> {
  const alone = openNumbering();
  numberFor(alone, list);
  return alone.byHash.keys();
}
