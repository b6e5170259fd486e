import { type Random, uniform } from '../../base/random/random.ts';
import type { Alternative, Instance, Way } from './instance.ts';

/** The most pieces of the way's kind that are of use beside those laid already. */
function wantedOfWay({ strips, most, laid }: Way): number {
  return Math.max(0, strips * most - laid);
}

/** The instance with its copies made within these limits; the demand of each way's kind follows. */
export function withAlternatives(instance: Instance, alternatives: readonly Alternative[]): Instance {
  const demand = new Map<number, number>();
  for (const { ways } of alternatives) for (const way of ways) demand.set(way.kind, wantedOfWay(way));
  const kinds = instance.kinds.map((kind, k) => (demand.has(k) ? { ...kind, demand: demand.get(k)! } : kind));
  return { ...instance, kinds, alternatives };
}

/** Copies made in each way, by alternative. */
export type Made = readonly (readonly number[])[];

/** An instance whose copies are made as said, so many in each way: its ways' kinds are wanted like any other. */
export function withWaysFixed(instance: Instance, made: Made): Instance {
  const fixed = (instance.alternatives ?? []).map(({ copies, ways }, a): Alternative => ({
    copies,
    ways: ways.map((way, w) => ({ ...way, least: made[a]![w]!, most: made[a]![w]! })),
  }));
  return { ...withAlternatives(instance, fixed), alternatives: [] };
}

/**
 * How many whole copies the pieces cut make in each way, no more than are wanted in all: where there are too many, those of
 * the most strips are left out first, since they take the most cuts.
 * @param cut by kind, pieces beside those laid already
 */
export function copiesMade({ alternatives = [] }: Instance, cut: ArrayLike<number>): number[][] {
  return alternatives.map(({ copies, ways }) => {
    const made = ways.map(({ kind, strips, laid }) => Math.floor((laid + cut[kind]!) / strips));
    let over = made.reduce((sum, each) => sum + each, 0) - copies;
    const order = [...ways.keys()].sort((a, b) => ways[b]!.strips - ways[a]!.strips);
    for (const w of order) {
      const less = Math.min(made[w]!, Math.max(0, over));
      made[w] = made[w]! - less;
      over -= less;
    }
    return made;
  });
}

/** Whole copies near these shares, as many in all as are wanted: the largest remainders go up. */
export function roundedCopies({ alternatives = [] }: Instance, shares: Made): number[][] {
  return alternatives.map(({ copies, ways }, a) => {
    const share = shares[a]!;
    const made = ways.map(({ least, most }, w) =>
      Math.min(most, Math.max(least, Math.floor(share[w]! + 1e-6))),
    );
    const order = [...ways.keys()].sort((b, c) => share[c]! - made[c]! - (share[b]! - made[b]!) || b - c);
    let open = copies - made.reduce((sum, each) => sum + each, 0);
    for (let round = 0; open > 0 && round < copies; round += 1) {
      for (const w of order) {
        if (open <= 0 || made[w]! >= ways[w]!.most) continue;
        made[w] = made[w]! + 1;
        open -= 1;
      }
    }
    return made;
  });
}

/** What a master makes in each way, by alternative, in shares of copies. */
export function sharesOf({ alternatives = [] }: Instance, made: Float64Array): number[][] {
  let row = 0;
  return alternatives.map(({ ways }) =>
    ways.map(({ least }) => {
      row += 1;
      return least + made[row - 1]!;
    }),
  );
}

/**
 * The job that is left when some boards are laid: strips laid already count for the copies they can be part of.
 * @param cut by kind, pieces laid
 * @param copies boards left, by group
 */
export function leftToLay(instance: Instance, cut: ArrayLike<number>, copies: ArrayLike<number>): Instance {
  const kinds = instance.kinds.map((kind, k) => ({ ...kind, demand: Math.max(0, kind.demand - cut[k]!) }));
  const groups = instance.groups.map((group, g) => ({ ...group, copies: copies[g]! }));
  const alternatives = (instance.alternatives ?? []).map(({ copies: wanted, ways }): Alternative => {
    const laid = ways.map((way) => way.laid + cut[way.kind]!);
    const made = ways.map(({ strips, least }, w) => Math.max(least, Math.floor(laid[w]! / strips)));
    const spare = Math.max(0, wanted - made.reduce((sum, each) => sum + each, 0));
    return {
      copies: Math.max(
        wanted,
        made.reduce((sum, each) => sum + each, 0),
      ),
      ways: ways.map((way, w) => ({ ...way, laid: laid[w]!, least: made[w]!, most: made[w]! + spare })),
    };
  });
  return withAlternatives({ ...instance, kinds, groups }, alternatives);
}

/** How far a draw may stray from the cheapest way, in shares of its price. */
const stray = 0.3;

/** How often a draw keeps to the ways of the layout at hand. */
const shareKept = 0.4;

/**
 * Draws how the copies that are left are made: now and then as before, else each in a way that is cheap at these prices,
 * strips laid already for nothing.
 * @param before copies made in each way by the layout at hand
 */
export function drawnWays(
  { alternatives = [] }: Instance,
  before: Made,
  kindPrice: ArrayLike<number>,
  random: Random,
): number[][] {
  return alternatives.map(({ copies, ways }, a) => {
    const made = ways.map(({ least }) => least);
    const keeps = uniform(random) < shareKept;
    for (let left = copies - made.reduce((sum, each) => sum + each, 0); left > 0; left -= 1) {
      const priced = ways.map(({ kind, strips, most, laid }, w) => {
        if (made[w]! >= most) return Infinity;
        if (keeps && made[w]! < before[a]![w]!) return -1;
        const open = Math.max(0, Math.min(strips, strips * (made[w]! + 1) - laid));
        return open * kindPrice[kind]! * (1 + stray * uniform(random));
      });
      const w = priced.indexOf(Math.min(...priced));
      made[w] = made[w]! + 1;
    }
    return made;
  });
}

/** Whole copies drawn near these shares: what is left over after rounding down goes to ways by the chance of their remainders. */
export function drawnCopies({ alternatives = [] }: Instance, shares: Made, random: Random): number[][] {
  return alternatives.map(({ copies, ways }, a) => {
    const share = shares[a]!;
    const made = ways.map(({ least, most }, w) =>
      Math.min(most, Math.max(least, Math.floor(share[w]! + 1e-6))),
    );
    for (let left = copies - made.reduce((sum, each) => sum + each, 0); left > 0; left -= 1) {
      const chances = ways.map(({ most }, w) =>
        made[w]! >= most ? 0 : 1e-3 + Math.max(0, share[w]! - made[w]!),
      );
      let aim = uniform(random) * chances.reduce((sum, each) => sum + each, 0);
      const w = chances.findIndex((each) => (aim -= each) < 0);
      const at = w < 0 ? chances.findIndex((each) => each > 0) : w;
      made[at] = made[at]! + 1;
    }
    return made;
  });
}
