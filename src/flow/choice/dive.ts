import { type Column, columnWorth } from './column.ts';
import { areaWorth, greedy } from './greedy.ts';
import { type Generated, type Pool, type Rest, generateColumns } from './generate.ts';
import type { Instance } from './instance.ts';
import { isDone, spend, timesInRest } from './plan.ts';

/** A column to fix next, and how often. */
interface Fixing {
  readonly column: Column;
  readonly times: number;
}

/** Use from which a column counts as chosen by the master outright. */
const chosen = 1 - 1e-6;

/**
 * What a dive fixes: all columns the master uses fully, else the one it uses most; between equals the one that
 * pays best for its board.
 */
function nextFixings({ answer, columns }: Generated, rest: Rest): Fixing[] {
  let most: Fixing | null = null;
  let score = 0;
  const whole: Fixing[] = [];
  columns.forEach((column, c) => {
    const use = answer.use[c]!;
    if (use < 1e-6) return;
    const times = timesInRest(column, rest);
    if (times === 0) return;
    if (use >= chosen) whole.push({ column, times: Math.min(times, Math.floor(use + 1e-6)) });
    const pays = columnWorth(column, answer.kindPrice) / (column.cost + 1e-9);
    const here = use + 1e-3 * Math.min(1, pays);
    if (here > score) {
      score = here;
      most = { column, times: 1 };
    }
  });
  if (whole.length > 0) return whole;
  return most === null ? [] : [most];
}

/** Rounds of column generation at first and after each fixing, and the meter reading past which it makes no more columns. */
export interface DiveLimits {
  readonly first: number;
  readonly later: number;
  readonly until: number;
  readonly fine: boolean;
}

/**
 * Diving: generate columns, fix some, take their pieces off the demand, and again with what is left, so that
 * late patterns are made for the pieces that remain. Past `until` on the meter it goes on with the columns it has. Yields between rounds.
 * @param rest changed: what the dive could not place
 */
export function* dive(
  instance: Instance,
  rest: Rest,
  pool: Pool,
  limits: DiveLimits,
): Generator<void, Column[], void> {
  const fixed: Column[] = [];
  const worth = areaWorth(instance);
  for (let depth = 0; !isDone(rest); depth += 1) {
    const generated = yield* generateColumns(instance, rest, pool, {
      rounds: depth === 0 ? limits.first : limits.later,
      until: limits.until,
      fine: limits.fine,
    });
    const fixings = nextFixings(generated, rest);
    // Whatever the master can do nothing with is laid out board by board.
    if (fixings.length === 0)
      return [
        ...fixed,
        ...(yield* greedy(instance, rest, pool, worth, { fine: limits.fine, fromPool: false })),
      ];
    for (const { column, times } of fixings) {
      for (let t = Math.min(times, timesInRest(column, rest)); t > 0; t -= 1) {
        fixed.push(column);
        spend(rest, column);
      }
    }
  }
  return fixed;
}
