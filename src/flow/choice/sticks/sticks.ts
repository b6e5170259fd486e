/**
 * A job of sticks: lengths to be cut from stocks of lengths. Whole numbers, each grown by the kerf (n pieces need n
 * lengths and n − 1 kerfs: n grown lengths fit in the grown stick) and divided by their common divisor.
 */
export interface Sticks {
  /** Lengths of the kinds, longest first, all different. */
  readonly lengths: Int32Array;
  readonly demand: Int32Array;
  readonly stocks: readonly StickStock[];
  /** What leaving out one piece costs, in the unit of the stocks' costs: above that of all sticks together. */
  readonly penalty: Float64Array;
  /** True when all costs are whole numbers: then a bound may be rounded up. */
  readonly whole: boolean;
}

export interface StickStock {
  readonly length: number;
  readonly cost: number;
  readonly copies: number;
}

/** How one stick is cut: kinds ascending and how many of each. */
export interface Pattern {
  readonly stock: number;
  readonly kinds: readonly number[];
  readonly counts: readonly number[];
}

/** What is still to be cut, and from what. */
export interface Remainder {
  readonly demand: Int32Array;
  readonly copies: Int32Array;
}

/** Patterns cut, once each, and what is missing: the cost holds the penalties. */
export interface Cutting {
  readonly patterns: readonly Pattern[];
  readonly cost: number;
}

/** Everything still to be cut from all sticks. */
export function wholeRemainder(sticks: Sticks): Remainder {
  return {
    demand: Int32Array.from(sticks.demand),
    copies: Int32Array.from(sticks.stocks, (stock) => stock.copies),
  };
}

/** What is left when these patterns are cut. */
export function remainderAfter(sticks: Sticks, patterns: readonly Pattern[]): Remainder {
  const rest = wholeRemainder(sticks);
  for (const pattern of patterns) take(rest, pattern);
  return rest;
}

/** Takes the pattern off what is left. */
export function take(rest: Remainder, pattern: Pattern): void {
  rest.copies[pattern.stock] = rest.copies[pattern.stock]! - 1;
  pattern.kinds.forEach((kind, i) => (rest.demand[kind] = rest.demand[kind]! - pattern.counts[i]!));
}

/** Whether nothing is wanted any more. */
export function isAllCut(rest: Remainder): boolean {
  return rest.demand.every((count) => count <= 0);
}

/** The patterns as a cutting, with what it costs. */
export function cuttingOf(sticks: Sticks, patterns: readonly Pattern[]): Cutting {
  const rest = remainderAfter(sticks, patterns);
  let cost = 0;
  for (const pattern of patterns) cost += sticks.stocks[pattern.stock]!.cost;
  rest.demand.forEach((count, k) => (cost += Math.max(0, count) * sticks.penalty[k]!));
  return { patterns, cost };
}

/** Patterns of one stick with the same counts have the same key. */
export function patternKey(pattern: Pattern): string {
  return `${pattern.stock}|${pattern.kinds.join(',')}|${pattern.counts.join(',')}`;
}

/** What the pieces of a pattern are worth together. */
export function patternWorth(pattern: Pattern, worth: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < pattern.kinds.length; i += 1) sum += pattern.counts[i]! * worth[pattern.kinds[i]!]!;
  return sum;
}

/** The pattern less what is not wanted any more; null when nothing of it is, or its stock is used up. */
export function clipped(pattern: Pattern, rest: Remainder): Pattern | null {
  if (rest.copies[pattern.stock]! <= 0) return null;
  if (pattern.kinds.every((kind, i) => pattern.counts[i]! <= rest.demand[kind]!)) return pattern;
  const kinds: number[] = [];
  const counts: number[] = [];
  pattern.kinds.forEach((kind, i) => {
    const count = Math.min(pattern.counts[i]!, rest.demand[kind]!);
    if (count <= 0) return;
    kinds.push(kind);
    counts.push(count);
  });
  return kinds.length === 0 ? null : { stock: pattern.stock, kinds, counts };
}

/** The least cost that a plan within the bound can have: a whole number where all costs are whole. */
export function raised(sticks: Sticks, bound: number): number {
  return sticks.whole ? Math.ceil(bound - 1e-6) : bound;
}
