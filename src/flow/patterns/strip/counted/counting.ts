import type { StackArc, StackOption } from '../stack.ts';

/** A kind whose pieces are counted, and how many of them one board may hold at most. */
export interface Counted {
  readonly kind: number;
  readonly cap: number;
}

/** How often each counted kind is used, as one number: a use. Use 0 has none of them; a use that holds less has a smaller number. */
export interface Counting {
  readonly uses: number;
  /** Use with the pieces of both, by use × uses + other; −1 where a cap is passed. */
  readonly sum: Int32Array;
  /** For each use those that hold no more of any kind, itself left out. */
  readonly less: readonly (readonly number[])[];
  /** Use of a single piece of each kind counted. */
  readonly single: ReadonlyMap<number, number>;
}

/** How many uses there are of these kinds: Π (cap + 1). */
export function usesOf(counted: readonly Counted[]): number {
  return counted.reduce((uses, { cap }) => uses * (cap + 1), 1);
}

/** The counting of these kinds, each at least once at most. O(uses² × kinds). */
export function countingOf(counted: readonly Counted[]): Counting {
  const uses = usesOf(counted);
  const digits = Array.from({ length: uses }, (_, use) => {
    let left = use;
    return counted.map(({ cap }) => {
      const digit = left % (cap + 1);
      left = (left - digit) / (cap + 1);
      return digit;
    });
  });
  const numberOf = (counts: readonly number[]): number => {
    if (counts.some((count, i) => count > counted[i]!.cap)) return -1;
    return counts.reduceRight((use, count, i) => use * (counted[i]!.cap + 1) + count, 0);
  };
  const sum = new Int32Array(uses * uses);
  for (let a = 0; a < uses; a += 1) {
    for (let b = 0; b < uses; b += 1) {
      sum[a * uses + b] = numberOf(digits[a]!.map((count, i) => count + digits[b]![i]!));
    }
  }
  const less = digits.map((counts, use) =>
    [...digits.keys()].filter((v) => v !== use && digits[v]!.every((count, i) => count <= counts[i]!)),
  );
  const single = new Map(
    counted.map(({ kind }, i) => [kind, numberOf(counted.map((_, j) => (i === j ? 1 : 0)))]),
  );
  return { uses, sum, less, single };
}

/** The best stacks of an option for each use: their worth, 0 where there is none, and the arc each node goes on by. */
interface UsedStacks {
  readonly worth: Float64Array;
  readonly arcs: readonly (StackArc | undefined)[];
}

function usedStacks(option: StackOption, worth: Float64Array, { uses, sum, single }: Counting): UsedStacks {
  const value = new Float64Array(option.nodes * uses).fill(-1);
  const arcs = new Array<StackArc | undefined>(option.nodes * uses);
  for (let node = 0; node < option.nodes; node += 1) value[node * uses] = 0;
  for (const arc of option.arcs) {
    if (worth[arc.kind]! <= 0) continue;
    const one = single.get(arc.kind) ?? 0;
    for (let use = 0; use < uses; use += 1) {
      const before = value[arc.to * uses + use]!;
      const all = sum[one * uses + use]!;
      if (before < 0 || all < 0) continue;
      const total = worth[arc.kind]! + before;
      if (total <= value[arc.from * uses + all]!) continue;
      value[arc.from * uses + all] = total;
      arcs[arc.from * uses + all] = arc;
    }
  }
  return { worth: value.subarray(0, uses), arcs };
}

/** Most worth of a stack for each use; 0 or less where there is none. O(arcs × uses). */
export function worthByUse(option: StackOption, worth: Float64Array, counting: Counting): Float64Array {
  return usedStacks(option, worth, counting).worth;
}

/** The most valuable stack of exactly this use. */
export function stackOfUse(
  option: StackOption,
  worth: Float64Array,
  counting: Counting,
  use: number,
): StackArc[] {
  const { arcs } = usedStacks(option, worth, counting);
  const { uses, sum, single } = counting;
  const pieces: StackArc[] = [];
  let left = use;
  for (let arc = arcs[use]; arc !== undefined; arc = arcs[arc.to * uses + left]) {
    pieces.push(arc);
    const one = single.get(arc.kind) ?? 0;
    for (let rest = 0; rest <= left; rest += 1) {
      if (sum[one * uses + rest] !== left) continue;
      left = rest;
      break;
    }
  }
  return pieces;
}
