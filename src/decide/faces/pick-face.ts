import type { FaceTable, PossibleFace } from './face-table.ts';

/**
 * The best looking choice that breaks no run further than the cheapest plan does and costs at most the premium more than the
 * cheapest plan; of equals the cheaper, then the first. Null when none does.
 * @param premium share of the cheapest plan's value, 0 to 1
 */
export function pickFace({ plan, choices }: FaceTable, premium: number): PossibleFace | null {
  const most = premium * Math.abs(plan.value) + 0.005;
  let best: PossibleFace | null = null;
  for (const choice of choices) {
    if (choice.kind !== 'possible' || !choice.keepsGrain || choice.extra > most) continue;
    if (best === null || choice.measure > best.measure) best = choice;
    else if (choice.measure === best.measure && choice.extra < best.extra - 0.005) best = choice;
  }
  return best;
}
