import type { Part } from '../../../flow/parts/part.ts';

/**
 * The parts with those that are alike put together as one part of all their copies: whether a job comes out does not
 * hang on their names, and the solver is quicker with fewer kinds of piece. Runs stay as they are; parts that nobody wants
 * are left out.
 */
export function alikeTogether(parts: readonly Part[]): Part[] {
  const found = new Map<string, Part>();
  parts.forEach((part, index) => {
    if (part.quantity <= 0) return;
    const key = part.run === null ? keyOf(part) : String(index);
    const known = found.get(key);
    found.set(key, known === undefined ? part : { ...known, quantity: known.quantity + part.quantity });
  });
  return [...found.values()];
}

/** All that says where a free part may lie and how it may be made. */
function keyOf({ length, width, thickness, grain, quality, accept, glueUp, pin, tone }: Part): string {
  return JSON.stringify([length, width, thickness, grain, quality, accept, glueUp, pin, tone ?? null]);
}
