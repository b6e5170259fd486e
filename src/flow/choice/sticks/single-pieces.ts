import type { Pattern, Sticks } from './sticks.ts';

/** A job of sticks in which every piece is a kind of its own, and the way back. */
export interface SinglePieces {
  readonly sticks: Sticks;
  /** Kind of the whole job that each piece is of. */
  readonly kindOf: Int32Array;
}

/** The same job with every piece a kind of its own, wanted once, and which kind each piece is of. */
export function singlePieces(sticks: Sticks): SinglePieces {
  const kindOf: number[] = [];
  sticks.demand.forEach((count, k) => {
    for (let copy = 0; copy < count; copy += 1) kindOf.push(k);
  });
  return {
    sticks: {
      lengths: Int32Array.from(kindOf, (k) => sticks.lengths[k]!),
      demand: new Int32Array(kindOf.length).fill(1),
      stocks: sticks.stocks,
      penalty: Float64Array.from(kindOf, (k) => sticks.penalty[k]!),
      whole: sticks.whole,
    },
    kindOf: Int32Array.from(kindOf),
  };
}

/** A pattern of single pieces as one of kinds. */
export function pooled({ kindOf }: SinglePieces, pattern: Pattern): Pattern {
  const kinds: number[] = [];
  const counts: number[] = [];
  pattern.kinds.forEach((piece, i) => {
    const kind = kindOf[piece]!;
    if (kinds[kinds.length - 1] === kind) counts[counts.length - 1]! += pattern.counts[i]!;
    else {
      kinds.push(kind);
      counts.push(pattern.counts[i]!);
    }
  });
  return { stock: pattern.stock, kinds, counts };
}

/** Single pieces for patterns of kinds, each piece once, the next of its kind. */
export function parted({ kindOf, sticks }: SinglePieces, patterns: readonly Pattern[]): Pattern[] {
  const next = new Map<number, number>();
  kindOf.forEach((kind, piece) => {
    if (!next.has(kind)) next.set(kind, piece);
  });
  return patterns.map((pattern) => {
    const pieces = pattern.kinds.flatMap((kind, i) => {
      const from = next.get(kind)!;
      next.set(kind, from + pattern.counts[i]!);
      return Array.from({ length: pattern.counts[i]! }, (_, c) => from + c);
    });
    const real = pieces.filter((piece) => piece < sticks.lengths.length);
    return { stock: pattern.stock, kinds: real, counts: real.map(() => 1) };
  });
}
