import type { PlatePattern } from '../patterns/plate.ts';
import type { Counted } from '../patterns/strip/counted/counting.ts';
import type { Instance } from './instance.ts';

/** What one board is asked: a bound on its patterns' worth at these prices, its claims taken off them. */
export interface BoardAsk {
  readonly group: number;
  readonly worth: Float64Array;
  /** What a pattern must be worth to be of interest. */
  readonly target: number;
  /** By how much a bound may be too high. */
  readonly slack: number;
  readonly counted: readonly Counted[];
}

export interface BoardBound {
  readonly bound: number;
  /** Patterns that may be worth more than the target. */
  readonly patterns: readonly PlatePattern[];
}

/**
 * Bounds on the worth of any pattern of each board, less what long pieces beside each other lose: (N − 1)⁺ e for N of them.
 * Where that may matter a board is asked twice, its bound the lesser of two: with nothing lost, and, since (N − 1)⁺ ≥ N − 1, with
 * each long piece worth e less, and e put back once.
 */
export function boundBoards(instance: Instance, asks: readonly BoardAsk[]): BoardBound[] {
  const first = instance.price(
    asks.map(({ group, ...ask }) => ({
      ...ask,
      pricer: instance.groups[group]!.pricer,
      how: 'bound' as const,
    })),
  );
  const again = asks.flatMap((ask, i) => {
    const { beside } = instance.groups[ask.group]!;
    return beside === null || first[i]!.bound <= ask.target ? [] : [{ ask, i, beside }];
  });
  const second = instance.price(
    again.map(({ ask: { group, ...ask }, beside }) => {
      const worth = ask.worth.slice();
      for (const kind of beside.kinds) worth[kind] = worth[kind]! - beside.credit;
      const target = ask.target - beside.credit;
      return { ...ask, worth, target, pricer: instance.groups[group]!.pricer, how: 'bound' as const };
    }),
  );
  const answers = first.map(({ bound, pattern }): BoardBound => ({
    bound,
    patterns: pattern === null ? [] : [pattern],
  }));
  again.forEach(({ i, beside }, at) => {
    const { bound, pattern } = second[at]!;
    const { bound: free, patterns } = answers[i]!;
    answers[i] = {
      bound: Math.min(free, bound + beside.credit),
      patterns: pattern === null ? patterns : [...patterns, pattern],
    };
  });
  return answers;
}
