import { expect, it } from 'vitest';
import { gathered } from '../../../src/base/lists/gathered.ts';

it('gathers by key, keys and items in the order of first sight, each item looked at once', () => {
  const asked: number[] = [];
  const lists = gathered([3, 4, 5, 8], (n) => {
    asked.push(n);
    return n % 2;
  });
  expect([...lists]).toEqual([
    [1, [3, 5]],
    [0, [4, 8]],
  ]);
  expect(asked).toEqual([3, 4, 5, 8]);
});
