/** A choice as two numbers: how well it looks, and what it costs beyond the cheapest plan. */
export interface LookAndCost {
  readonly measure: number;
  readonly extra: number;
}

/**
 * For each choice, whether no other looks at least as well for no more money, and is better in one of the two. Money
 * is compared to the cent. Equal choices do not beat each other.
 */
export function unbeaten(choices: readonly LookAndCost[]): boolean[] {
  return choices.map((one) => !choices.some((other) => beats(other, one)));
}

function beats(a: LookAndCost, b: LookAndCost): boolean {
  const cost = Math.round(100 * a.extra) - Math.round(100 * b.extra);
  const look = a.measure - b.measure;
  return cost <= 0 && look >= 0 && (cost < 0 || look > 0);
}
