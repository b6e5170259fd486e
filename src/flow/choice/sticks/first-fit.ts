import type { Pattern, Remainder, Sticks } from './sticks.ts';
import { take } from './sticks.ts';

/**
 * One stick filled longest first with what is left (first fit decreasing, stick by stick): each kind in turn, as many
 * as fit. Null when the stick is shorter than all that is left.
 */
function filled(sticks: Sticks, rest: Remainder, stock: number): { pattern: Pattern; used: number } | null {
  const { length } = sticks.stocks[stock]!;
  let room = length;
  const kinds: number[] = [];
  const counts: number[] = [];
  sticks.lengths.forEach((each, k) => {
    const count = Math.min(Math.max(0, rest.demand[k]!), Math.floor(room / each));
    if (count === 0) return;
    kinds.push(k);
    counts.push(count);
    room -= count * each;
  });
  return kinds.length === 0 ? null : { pattern: { stock, kinds, counts }, used: length - room };
}

/** First fit decreasing; of several stocks the one whose stick costs least per length used, again at each stick. */
export function firstFit(sticks: Sticks, rest: Remainder): Pattern[] {
  const patterns: Pattern[] = [];
  for (;;) {
    let best: Pattern | null = null;
    let least = Infinity;
    sticks.stocks.forEach((stock, g) => {
      if (rest.copies[g]! <= 0) return;
      const one = filled(sticks, rest, g);
      if (one === null) return;
      const price = stock.cost / one.used;
      if (price >= least) return;
      least = price;
      best = one.pattern;
    });
    if (best === null) return patterns;
    patterns.push(best);
    take(rest, best);
  }
}
