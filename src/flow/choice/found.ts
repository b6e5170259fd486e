import type { PlatePattern } from '../patterns/plate.ts';
import type { PriceBound } from '../patterns/strip/strip-pricer.ts';
import { type Column, columnOf } from './column.ts';
import { type Pool, type Rest, addToPool } from './generate.ts';
import type { Instance } from './instance.ts';
import { withinCaps } from './price-together.ts';

/** The column of a pattern found for a group, without the pieces that are more than wanted. */
export function columnFound({ groups }: Instance, rest: Rest, g: number, pattern: PlatePattern): Column {
  return columnOf(g, withinCaps(pattern.placements, rest.demand), groups[g]!);
}

/** Adds to the pool what was found for groups asked, answer by answer. */
export function keepFound(
  instance: Instance,
  rest: Rest,
  pool: Pool,
  groups: readonly number[],
  answers: readonly PriceBound[],
): void {
  answers.forEach(({ pattern }, i) => {
    if (pattern !== null) addToPool(pool, columnFound(instance, rest, groups[i]!, pattern));
  });
}
