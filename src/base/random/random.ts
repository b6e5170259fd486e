/**
 * A seeded stream of random numbers: its state is a plain value that the caller holds and passes on. Each draw moves it
 * on, so the same seed and the same draws give the same numbers on any machine.
 */
export interface Random {
  /** 32 bits. */
  state: number;
}

/**
 * Starts a stream. Nearby seeds give unrelated streams.
 * @param seed any whole number; only its low 32 bits count
 * @param branch a second number for streams that belong together, as one per draw of an experiment
 */
export function random(seed: number, branch = 0): Random {
  return { state: (mix(mix(seed | 0) ^ Math.imul(branch | 0, 0x9e3779b1)) + branch) | 0 };
}

/**
 * A number in [0, 1), a multiple of 2^-32.
 * Generator: state advanced by the golden ratio and mixed by two multiplications, after Steele, Lea and Flood, "Fast
 * splittable pseudorandom number generators" (2014); here with 32 bits, enough for some millions of draws.
 */
export function uniform(stream: Random): number {
  stream.state = (stream.state + 0x9e3779b9) | 0;
  return (mix(stream.state) >>> 0) / 4294967296;
}

/** A whole number, least ≤ value ≤ most, all equally likely. */
export function whole(stream: Random, least: number, most: number): number {
  return least + Math.floor(uniform(stream) * (most - least + 1));
}

/** True with the given chance, 0 to 1. */
export function chance(stream: Random, share: number): boolean {
  return uniform(stream) < share;
}

/** Puts a list into an order drawn, all orders equally likely (Fisher and Yates). @param list changed */
export function shuffle<T>(stream: Random, list: T[]): void {
  for (let i = list.length - 1; i > 0; i -= 1) {
    const j = whole(stream, 0, i);
    [list[i], list[j]] = [list[j]!, list[i]!];
  }
}

/** One of the weighted values. @param choices not empty; weights ≥ 0, not all 0 */
export function weighted<T>(stream: Random, choices: readonly (readonly [value: T, weight: number])[]): T {
  const total = choices.reduce((sum, [, weight]) => sum + weight, 0);
  let left = uniform(stream) * total;
  for (const [value, weight] of choices) {
    left -= weight;
    if (left < 0) return value;
  }
  return choices.at(-1)![0];
}

/** Standard normal deviate, by the polar form of Box and Muller without its spare value. */
export function normal(stream: Random): number {
  const radius = Math.sqrt(-2 * Math.log(1 - uniform(stream)));
  return radius * Math.cos(2 * Math.PI * uniform(stream));
}

/**
 * How many events happen when `mean` are expected (Poisson). Knuth's product of uniforms: O(mean), fine for a board's
 * defects.
 * @param mean ≥ 0, below some hundreds
 */
export function poisson(stream: Random, mean: number): number {
  const least = Math.exp(-mean);
  let count = 0;
  for (let product = uniform(stream); product > least; product *= uniform(stream)) count += 1;
  return count;
}

/** 32-bit mixer: each bit of the input changes about half of the bits of the output. */
function mix(value: number): number {
  let mixed = Math.imul(value ^ (value >>> 16), 0x21f0aaad);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
  return mixed ^ (mixed >>> 15);
}
