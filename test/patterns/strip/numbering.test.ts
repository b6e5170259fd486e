import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Numbering,
  forgetLists,
  numberPut,
  openNumbering,
  put,
} from '../../../src/flow/patterns/strip/numbering.ts';

const lists = fc.array(fc.array(fc.integer({ min: -3, max: 3 }), { maxLength: 4 }), { maxLength: 200 });

function numberFor(numbering: Numbering, list: readonly number[]): number {
  for (const entry of list) put(numbering, entry);
  return numberPut(numbering);
}

/** The list of a number. */
function listOf({ lists: all, from }: Numbering, number: number): string {
  return all.slice(from[number], from[number + 1]).join();
}

describe('numbers of lists', () => {
  it('are the same for equal lists alone, in the order in which these turned up, also once others are forgotten', () => {
    fc.assert(
      fc.property(lists, lists, (first, second) => {
        const numbering = openNumbering();
        for (const given of [first, second]) {
          forgetLists(numbering);
          const known: string[] = [];
          for (const list of given) {
            const key = list.join();
            if (!known.includes(key)) known.push(key);
            expect(numberFor(numbering, list)).toBe(known.indexOf(key));
          }
          expect(numbering.count).toBe(known.length);
          known.forEach((key, number) => {
            expect(listOf(numbering, number)).toBe(key);
          });
        }
      }),
    );
  });

  it('tell thousands of lists apart', () => {
    const numbering = openNumbering();
    for (const again of [false, true]) {
      for (let i = 0; i < 5_000; i += 1) {
        const number = numberFor(numbering, [i % 70, 65_536 * i, i]);
        expect(number, `list ${i}${again ? ' again' : ''}`).toBe(i);
      }
    }
    expect(numbering.slots.filter((slot) => slot !== 0)).toHaveLength(5_000);
  });

  it('tell lists apart that share a hash', () => {
    const numbering = openNumbering();
    numberFor(numbering, [7]);
    // The first list is made to look as if its hash, and the place of it, were those of the next.
    const alone = openNumbering();
    numberFor(alone, [8]);
    numbering.hashes[0] = alone.hashes[0]!;
    numbering.slots.set(alone.slots);
    expect([numberFor(numbering, [8]), numberFor(numbering, [9]), numberFor(numbering, [8])]).toEqual([
      1, 2, 1,
    ]);
  });
});
