import { type Random, uniform, whole } from '../../base/random/random.ts';
import type { Column } from './column.ts';
import { dive } from './dive.ts';
import { greedy, tastedWorth } from './greedy.ts';
import type { Pool, Rest } from './generate.ts';
import type { Instance } from './instance.ts';
import { type Plan, planOf, restAfter } from './plan.ts';

/** Board area that the column leaves empty, as a share. */
function emptiness(instance: Instance, column: Column): number {
  const { plate } = instance.groups[column.group]!;
  const area = plate.length * plate.width;
  const used = column.placements.reduce((sum, p) => sum + p.length * p.width, 0);
  return area === 0 ? 1 : 1 - used / area;
}

/** Which boards to clear: two to four or now and then all, the emptier the likelier. */
function boardsToClear(instance: Instance, plan: Plan, random: Random): Set<number> {
  const all = plan.columns.length;
  const count = uniform(random) < 0.2 ? all : Math.min(all, whole(random, 2, 4));
  const scored = plan.columns
    .map((column, index) => ({ index, score: emptiness(instance, column) + 0.6 * uniform(random) }))
    .sort((a, b) => b.score - a.score);
  return new Set(scored.slice(0, count).map(({ index }) => index));
}

/** Most free groups, beside those just cleared, that a neighbourhood may draw on. */
const mostFreeGroups = 12;

/** The rest with only some of the free boards: those of the incumbent's groups, and a draw of the others. */
function nearby(rest: Rest, columns: readonly Column[], random: Random): Rest {
  const own = new Set(columns.map((column) => column.group));
  const free = [...rest.copies.keys()].filter((g) => rest.copies[g]! > 0 && !own.has(g));
  const copies = rest.copies.slice();
  for (let drop = free.length - mostFreeGroups; drop > 0; drop -= 1) {
    const [g] = free.splice(whole(random, 0, free.length - 1), 1);
    copies[g!] = 0;
  }
  return { demand: rest.demand, copies };
}

/** With more boards than this, layouts are sought among a rough selection of positions. */
const mostFineGroups = 40;

/** What a neighbourhood costs beside its pricing, in work: else tiny jobs, whose pricing costs nothing, would go on for ever. */
const workPerTry = 30_000;

/**
 * Neighbourhood search: clear a few boards of the incumbent and lay their pieces out again, all free boards at hand,
 * by a greedy of another taste or by a dive; keep what is better. Yields between rounds and after each neighbourhood; stops after `tries` or when the meter passes `until`; every `diveEvery`-th
 * try is a dive.
 */
export function* improve(
  instance: Instance,
  start: Plan,
  pool: Pool,
  random: Random,
  limits: { readonly tries: number; readonly until: number; readonly diveEvery: number },
  better: (plan: Plan) => boolean,
): Generator<void, Plan, void> {
  // On a large job a layout from all positions takes longer than it is worth.
  const isFine = instance.groups.length <= mostFineGroups;
  let incumbent = start;
  for (let attempt = 1; attempt <= limits.tries && instance.meter.spent < limits.until; attempt += 1) {
    if (incumbent.columns.length === 0) break;
    instance.meter.spent += workPerTry + 1000 * (1 + instance.groups.length);
    const cleared = boardsToClear(instance, incumbent, random);
    const kept = incumbent.columns.filter((_, index) => !cleared.has(index));
    const rest = nearby(restAfter(instance, kept), incumbent.columns, random);
    const found =
      attempt % limits.diveEvery === 0
        ? yield* dive(instance, rest, pool, { first: 4, later: 2, until: limits.until, fine: isFine })
        : yield* greedy(instance, rest, pool, tastedWorth(instance, random), isFine);
    const plan = planOf(instance, [...kept, ...found]);
    if (plan.objective < incumbent.objective - 1e-9 * (1 + Math.abs(incumbent.objective))) {
      incumbent = plan;
      if (better(plan)) break;
    }
    yield;
  }
  return incumbent;
}
