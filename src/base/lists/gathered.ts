/**
 * Items by key, keys and items in the order of first sight. O(items): no list is copied as it grows.
 * @example gathered([3, 4, 5], (n) => n % 2) // Map { 1 => [3, 5], 0 => [4] }
 */
export function gathered<K, T>(items: Iterable<T>, keyOf: (item: T) => K): Map<K, T[]> {
  const lists = new Map<K, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const list = lists.get(key);
    if (list === undefined) lists.set(key, [item]);
    else list.push(item);
  }
  return lists;
}
