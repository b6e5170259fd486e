import { searchedLoad, tracedLoad } from '../../patterns/knapsack/best-load.ts';
import {
  type ArcWorth,
  type SuffixTable,
  fillSuffixTable,
  openSuffixTable,
  suffixBound,
} from '../../patterns/knapsack/suffix-table.ts';
import type { Meter } from '../../patterns/meter.ts';
import type { Pattern, Remainder, Sticks } from './sticks.ts';

/** Prices of pieces and sticks at which patterns are sought. */
export interface Prices {
  readonly kind: Float64Array;
  /** What a pattern of each stock must be worth to have reduced cost 0: its cost and what its scarcity adds. */
  readonly even: Float64Array;
  readonly arcs?: ArcWorth;
}

export interface Priced {
  /** For each stock an upper bound on the worth of its patterns; exact when the table's step is 1. */
  readonly most: Float64Array;
  /** Patterns worth more than even, the best first. */
  readonly patterns: readonly Pattern[];
}

export interface StickPricer {
  readonly table: SuffixTable;
  /** Best patterns for what is left, at most `wanted` of them. */
  price(prices: Prices, rest: Remainder, wanted: number): Priced;
}

interface Found {
  readonly pattern: Pattern;
  readonly gain: number;
}

/** Opens the pricing of one length of stick: bounded knapsacks over its pieces. */
export function openStickPricer(sticks: Sticks, meter: Meter): StickPricer {
  const longest = sticks.stocks.reduce((most, stock) => Math.max(most, stock.length), 0);
  const table = openSuffixTable(sticks.lengths, longest);
  const kinds = sticks.lengths.length;

  /** Kinds that the best patterns may begin with, by the most that such a pattern is worth. */
  function startsOf(g: number, prices: Prices, rest: Remainder, wanted: number): number[] {
    const { length } = sticks.stocks[g]!;
    const starts: { readonly first: number; readonly bound: number }[] = [];
    for (let k = 0; k < kinds && wanted > 1; k += 1) {
      if (rest.demand[k]! <= 0 || sticks.lengths[k]! > length) continue;
      const arc = prices.arcs?.[k]?.[length] ?? 0;
      const on = Math.floor((length - sticks.lengths[k]!) / table.step);
      const bound = prices.kind[k]! + arc + table.values[k * table.width + on]!;
      if (bound > prices.even[g]!) starts.push({ first: k, bound });
    }
    starts.sort((a, b) => b.bound - a.bound || a.first - b.first);
    return starts.slice(0, wanted).map(({ first }) => first);
  }

  /** The best pattern over all, and the best that begins with each of the likeliest kinds. */
  function found(g: number, prices: Prices, rest: Remainder, wanted: number, most: Float64Array): Found[] {
    const { length } = sticks.stocks[g]!;
    const even = prices.even[g]!;
    const best: Found[] = [];
    for (const first of [-1, ...startsOf(g, prices, rest, wanted)]) {
      const load =
        table.step === 1 ? tracedLoad(table, prices.kind, rest.demand, length, prices.arcs, first) : null;
      const searched =
        load === null
          ? searchedLoad(table, prices.kind, rest.demand, length, even + 1e-9, meter, first)
          : null;
      // A search over all that ends by itself says more than its coarse table.
      if (first < 0 && searched?.complete === true) most[g] = searched.load?.worth ?? even + 1e-9;
      const one = load ?? searched?.load ?? null;
      if (one === null || one.worth <= even || one.kinds.length === 0) continue;
      best.push({ pattern: { stock: g, kinds: one.kinds, counts: one.counts }, gain: one.worth - even });
    }
    return best;
  }

  return {
    table,
    price(prices, rest, wanted) {
      fillSuffixTable(table, prices.kind, rest.demand, meter, prices.arcs);
      const most = Float64Array.from(sticks.stocks, (stock) => suffixBound(table, stock.length));
      const all = sticks.stocks.flatMap((_, g) => {
        if (rest.copies[g]! <= 0 || most[g]! <= prices.even[g]!) return [];
        return found(g, prices, rest, wanted, most);
      });
      all.sort((a, b) => b.gain - a.gain);
      return { most, patterns: all.map((one) => one.pattern) };
    },
  };
}
