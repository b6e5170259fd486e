import { type Random, uniform } from '../../../base/random/random.ts';
import { firstFit } from './first-fit.ts';
import { type Point, type StickSolve, generateSticks } from './generate-sticks.ts';
import type { Restriction, StickDuals, StickMaster } from './stick-master.ts';
import { type Pattern, type Remainder, isAllCut, take } from './sticks.ts';

/** How often the pattern can be cut from what is left. */
function timesIn(pattern: Pattern, rest: Remainder): number {
  return pattern.kinds.reduce(
    (times, kind, i) => Math.min(times, Math.floor(rest.demand[kind]! / pattern.counts[i]!)),
    rest.copies[pattern.stock]!,
  );
}

interface Scored {
  readonly pattern: Pattern;
  readonly use: number;
  readonly score: number;
}

/** Patterns by use, shaken: a fuller stick wins between equals. */
function scored(solve: StickSolve, duals: StickDuals, shake: number, stream: Random): Scored[] {
  const { sticks } = solve;
  return duals.patterns
    .flatMap((pattern, i) => {
      const use = duals.use[i]!;
      if (use < 1e-4) return [];
      const full =
        pattern.kinds.reduce((sum, kind, j) => sum + sticks.lengths[kind]! * pattern.counts[j]!, 0) /
        sticks.stocks[pattern.stock]!.length;
      return [{ pattern, use, score: use - Math.floor(use + 1e-4) + 0.05 * full + shake * uniform(stream) }];
    })
    .sort((a, b) => b.score - a.score);
}

/**
 * One step of a dive: cut what the master uses wholly; if there is no such pattern, the one or few it uses most.
 */
function fix(
  solve: StickSolve,
  duals: StickDuals,
  rest: Remainder,
  shake: number,
  stream: Random,
): Pattern[] {
  const fixed: Pattern[] = [];
  const cut = (pattern: Pattern, times: number): void => {
    for (let t = Math.min(times, timesIn(pattern, rest)); t > 0; t -= 1) {
      fixed.push(pattern);
      take(rest, pattern);
    }
  };
  const list = scored(solve, duals, shake, stream);
  for (const { pattern, use } of list) cut(pattern, Math.floor(use + 1e-4));
  if (fixed.length > 0) return fixed;
  const few = Math.max(1, Math.floor(list.length / 20));
  for (const { pattern } of list.slice(0, few)) cut(pattern, 1);
  return fixed;
}

/**
 * A dive: column generation, fix some patterns, again with what is left. Gives up where the bound of the rest shows
 * that `target` cannot be reached. Each step's rest is also filled by first fit and offered.
 */
export function* diveSticks(
  solve: StickSolve,
  parent: StickMaster,
  at: Restriction,
  options: {
    /** Prices of the whole rest's bound. */
    readonly center: Point;
    readonly before: readonly Pattern[];
    readonly shake: number;
    readonly stream: Random;
    readonly until: number;
    /** A plan dearer than this is of no use. */
    readonly target: () => number;
    readonly offer: (patterns: readonly Pattern[]) => void;
  },
): Generator<void, void, void> {
  const { sticks, meter } = solve;
  const rest: Remainder = { demand: at.rest.demand.slice(), copies: at.rest.copies.slice() };
  const master = parent.fork();
  const fixed = [...options.before];
  const spent = (): number => fixed.reduce((sum, pattern) => sum + sticks.stocks[pattern.stock]!.cost, 0);
  let center = options.center;
  while (!isAllCut(rest)) {
    const room = options.target() - spent();
    const generated = yield* generateSticks(
      solve,
      master,
      { rest, banned: at.banned, least: [] },
      {
        cutoff: room + (sticks.whole ? 1 : 1e-9),
        enough: room - 1e-9,
        until: options.until,
        center,
      },
    );
    center = generated.proof;
    const dead = generated.duals === null || generated.bound > room + 1e-6;
    if (generated.duals !== null && !dead) {
      const fresh = fix(solve, generated.duals, rest, options.shake, options.stream);
      if (fresh.length === 0) return;
      fixed.push(...fresh);
    }
    const filled = firstFit(sticks, { demand: rest.demand.slice(), copies: rest.copies.slice() });
    options.offer([...fixed, ...filled]);
    if (dead || meter.spent > options.until) return;
  }
}
