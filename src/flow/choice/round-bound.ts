import type { Instance } from './instance.ts';

/** Money is counted in hundred-thousandths, so that prices such as 41.337 stay exact. */
const unitsPerMoney = 1e5;

function gcd(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

/**
 * Raises a bound to the next sum that board costs can make: when every cost is a whole multiple of some unit, so is
 * every plan that lays out all parts. Only where such a plan is at hand (`value` is below every penalty);
 * elsewhere, and where offcuts earn credit, the bound is returned as it is.
 */
export function roundedBound(instance: Instance, bound: number, value: number): number {
  if (instance.kinds.some((kind) => kind.penalty <= value)) return bound;
  if (instance.groups.some((group) => group.rate > 0)) return bound;
  let unit = 0;
  for (const { cost } of instance.groups) {
    const whole = Math.round(cost * unitsPerMoney);
    if (Math.abs(whole - cost * unitsPerMoney) > 1e-4) return bound;
    unit = gcd(unit, whole);
  }
  if (unit === 0) return bound;
  const step = unit / unitsPerMoney;
  return Math.ceil(bound / step - 1e-6) * step;
}
