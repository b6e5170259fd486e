import { dive } from './dive.ts';
import { firstLayout } from './first-layout.ts';
import { wholeRest } from './generate.ts';
import { areaWorth } from './greedy.ts';
import type { Instance } from './instance.ts';
import { planOf, waysOf } from './plan.ts';
import { type Solving, isMet, offerTo } from './standing.ts';
import { type Made, drawnCopies, roundedCopies, withWaysFixed } from './ways.ts';
import { isFew } from './work.ts';

/** Whether copies may be made in several ways. */
export function hasWays({ alternatives = [] }: Instance): boolean {
  return alternatives.length > 0;
}

/** The solve with the copies made in these ways: for layouts, not for bounds. */
export function inWays(solving: Solving, made: Made): Solving {
  return { ...solving, instance: withWaysFixed(solving.instance, made) };
}

/** The ways of the best layout; copies that it lacks in some way that is left. */
export function waysOfBest({ instance, standing }: Solving): number[][] {
  return roundedCopies(instance, waysOf(instance, standing.best.columns));
}

/** All copies of each alternative made in one way. */
function allIn({ alternatives = [] }: Instance, way: readonly number[]): number[][] {
  return alternatives.map(({ copies, ways }, a) => ways.map((_, w) => (w === way[a] ? copies : 0)));
}

/** Numbers of strips that first layouts are sought with. */
const firstStrips = [1, 2, Infinity];

/**
 * First layouts: all copies whole, of two strips, of the most; copies that boards hold no room for of one strip more, until
 * a layout holds them or no way is left.
 */
export function* firstLayouts(solving: Solving): Generator<void, void, void> {
  const { instance, standing } = solving;
  const { alternatives = [] } = instance;
  const all = isFew(instance) ? firstStrips : [2];
  for (const first of all) {
    const way = alternatives.map(({ ways }) => {
      const at = ways.findIndex(({ strips }) => strips >= first);
      return at < 0 ? ways.length - 1 : at;
    });
    for (let more = true; more;) {
      const here = inWays(solving, allIn(instance, way));
      const own = { ...here, standing: { ...standing, best: planOf(here.instance, []) } };
      yield* firstLayout(own, areaWorth(here.instance), { fine: isFew(instance), fromPool: false });
      offerTo(standing)(planOf(instance, own.standing.best.columns));
      const { missing } = own.standing.best;
      more = false;
      alternatives.forEach(({ ways }, a) => {
        const at = way[a]!;
        if (at + 1 >= ways.length || missing[ways[at]!.kind]! <= 0) return;
        way[a] = at + 1;
        more = true;
      });
    }
  }
}

/** Dives with the copies made about as the root's master makes them: once by the nearest whole numbers, then by others drawn. */
export function* divesAmongWays(solving: Solving, share: number, times: number): Generator<void, void, void> {
  const { instance, store, standing, stream, budget, mix } = solving;
  const limits = { first: 2, later: 6, until: share * budget, fine: false };
  if (mix.shares === null) return;
  for (let turn = 0; turn < times && !isMet(standing); turn += 1) {
    if (turn > 0 && instance.meter.spent > limits.until) return;
    const made = turn === 0 ? roundedCopies(instance, mix.shares) : drawnCopies(instance, mix.shares, stream);
    const fixed = withWaysFixed(instance, made);
    const columns = yield* dive(fixed, wholeRest(fixed), store.pool, limits);
    offerTo(standing)(planOf(instance, columns));
  }
}
