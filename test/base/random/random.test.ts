import { describe, expect, it } from 'vitest';
import {
  chance,
  normal,
  poisson,
  random,
  shuffle,
  uniform,
  weighted,
  whole,
} from '../../../src/base/random/random.ts';

const draws = 20_000;

function sample(draw: (stream: ReturnType<typeof random>) => number, seed = 7): number[] {
  const stream = random(seed);
  return Array.from({ length: draws }, () => draw(stream));
}

function moments(values: readonly number[]): { mean: number; variance: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return { mean, variance: values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length };
}

describe('random streams', () => {
  it('repeat for the same seed and branch, and differ for others', () => {
    const first = (seed: number, branch: number) => {
      const stream = random(seed, branch);
      return [uniform(stream), uniform(stream), uniform(stream)];
    };
    expect(first(1, 2)).toEqual(first(1, 2));
    const starts = new Set<number>();
    for (let seed = 0; seed < 40; seed += 1)
      for (let branch = 0; branch < 40; branch += 1) starts.add(first(seed, branch)[0]!);
    expect(starts.size).toBe(1600);
  });

  it('uniform numbers fill [0, 1) evenly: ten bins by the chi-squared test, and no lag of one', () => {
    const values = sample(uniform);
    const bins = Array.from({ length: 10 }, () => 0);
    for (const value of values) bins[Math.floor(value * 10)]! += 1;
    const chiSquared = bins.reduce((sum, count) => sum + (count - draws / 10) ** 2 / (draws / 10), 0);
    // 27.9 is the 99.9 % point of chi-squared with 9 degrees of freedom (standard tables).
    expect(chiSquared).toBeLessThan(27.9);
    const product = values
      .slice(1)
      .reduce((sum, value, index) => sum + (value - 0.5) * (values[index]! - 0.5), 0);
    expect(Math.abs((product / draws) * 12)).toBeLessThan(4 / Math.sqrt(draws));
  });

  it('have the means and variances of their distributions', () => {
    const close = (found: number, asked: number, deviation: number): void =>
      expect(Math.abs(found - asked)).toBeLessThan((5 * deviation) / Math.sqrt(draws));
    close(moments(sample((stream) => whole(stream, 3, 8))).mean, 5.5, Math.sqrt(35 / 12));
    close(moments(sample(normal)).mean, 0, 1);
    close(moments(sample(normal)).variance, 1, Math.SQRT2);
    close(moments(sample((stream) => poisson(stream, 3.5))).mean, 3.5, Math.sqrt(3.5));
    close(moments(sample((stream) => poisson(stream, 3.5))).variance, 3.5, Math.sqrt(3.5 + 2 * 3.5 ** 2));
    close(moments(sample((stream) => Number(chance(stream, 0.3)))).mean, 0.3, Math.sqrt(0.21));
    const pick = (stream: ReturnType<typeof random>): number =>
      weighted(stream, [
        [1, 1],
        [5, 3],
        [9, 0],
      ]);
    close(moments(sample(pick)).mean, 4, Math.sqrt(3));
    expect(sample(pick)).not.toContain(9);
  });

  it('shuffles into each order as often', () => {
    const tally = new Map<string, number>();
    const stream = random(11);
    for (let n = 0; n < draws; n += 1) {
      const list = [1, 2, 3];
      shuffle(stream, list);
      tally.set(list.join(), (tally.get(list.join()) ?? 0) + 1);
    }
    expect(tally.size).toBe(6);
    const deviation = Math.sqrt((draws * 5) / 36);
    for (const times of tally.values()) expect(Math.abs(times - draws / 6)).toBeLessThan(5 * deviation);
  });
});
