/**
 * The side on which a length that falls between two ticks is taken. What must not shrink (parts, kerf, defects) goes
 * up, what must not grow (boards) goes down.
 */
export type RoundingSide = 'up' | 'down' | 'nearest';

/**
 * numerator / denominator as a whole number, rounded to the stated side: up is towards +∞, down towards −∞, nearest
 * takes halves up. Exact for any size.
 * @param denominator > 0
 * @example roundedQuotient(7n, 2n, 'down') // 3n
 */
export function roundedQuotient(numerator: bigint, denominator: bigint, side: RoundingSide): bigint {
  if (side === 'nearest') return roundedQuotient(2n * numerator + denominator, 2n * denominator, 'down');
  if (side === 'up') return -roundedQuotient(-numerator, denominator, 'down');
  const towardsZero = numerator / denominator;
  return numerator % denominator < 0n ? towardsZero - 1n : towardsZero;
}
