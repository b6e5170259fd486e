import type { Instance } from './instance.ts';

/** Money is counted in hundred-thousandths, so that prices such as 41.337 stay exact. */
const unitsPerMoney = 1e5;

function gcd(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

/** Boards of more prices, or sums of more units, are not summed up. */
const mostPrices = 8;
const mostUnits = 2e6;

/**
 * The least sum of board costs, in units, from `least` on and up to `most`: no more copies of each than there are.
 * `most` where there is none below.
 */
function leastSum(
  boards: readonly { readonly cost: number; readonly copies: number }[],
  least: number,
  most: number,
): number {
  /** By sum: 1 if boards of the prices so far make it. */
  const made = new Uint8Array(most + 1);
  const used = new Int32Array(most + 1);
  made[0] = 1;
  boards.forEach(({ cost, copies }) => {
    // Copies of this board in the sum, the fewest that make it.
    used.fill(0);
    for (let sum = cost; sum <= most; sum += 1) {
      if (made[sum] === 1 || made[sum - cost] === 0 || used[sum - cost]! >= copies) continue;
      made[sum] = 1;
      used[sum] = used[sum - cost]! + 1;
    }
  });
  for (let sum = Math.max(0, least); sum < most; sum += 1) if (made[sum] === 1) return sum;
  return most;
}

/**
 * Raises a bound to the next sum that board costs can make: when every cost is a whole multiple of some unit, so is
 * every plan that lays out all parts; of few prices their sums are told one by one. Only where such a plan is at hand (`value` is below every
 * penalty); elsewhere, and where offcuts earn credit, the bound is returned as it is.
 */
export function roundedBound(instance: Instance, bound: number, value: number): number {
  if (instance.kinds.some((kind) => kind.penalty <= value)) return bound;
  if (instance.groups.some((group) => group.rate > 0)) return bound;
  const wholes: number[] = [];
  let unit = 0;
  for (const { cost } of instance.groups) {
    const whole = Math.round(cost * unitsPerMoney);
    if (Math.abs(whole - cost * unitsPerMoney) > 1e-4) return bound;
    wholes.push(whole);
    unit = gcd(unit, whole);
  }
  if (unit === 0) return bound;
  const step = unit / unitsPerMoney;
  const least = Math.ceil(bound / step - 1e-6);
  const most = Math.round(value / step);
  const dear = instance.groups.flatMap(({ copies }, g) =>
    wholes[g]! > 0 ? [{ cost: wholes[g]! / unit, copies }] : [],
  );
  const isToSum = dear.length <= mostPrices && most <= mostUnits && least < most;
  return (isToSum ? leastSum(dear, least, most) : least) * step;
}
