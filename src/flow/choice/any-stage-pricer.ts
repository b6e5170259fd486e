import { prepareGuillotine } from '../patterns/guillotine/prepare-guillotine.ts';
import type { Meter } from '../patterns/meter.ts';
import type { Kind, Plate } from '../patterns/plate.ts';
import type { Pricer } from '../patterns/strip/strip-pricer.ts';

/** Work of one question, in the engine's steps: a few passes over a board of usual size. */
const workPerQuestion = 4e6;

/**
 * Pricing with one or two stages, or with more than four, by the general guillotine engine. Its patterns keep the kinds' own caps, so a bound
 * from it is already one of capped patterns. The plate is made ready at the first question.
 */
export function openAnyStagePricer(plate: Plate, kinds: readonly Kind[], meter: Meter): Pricer {
  let ready: ReturnType<typeof prepareGuillotine> | null = null;
  const ask = (worth: Float64Array, caps: Int32Array | undefined, floor: number) => {
    ready ??= prepareGuillotine(plate, kinds, { limits: { passWork: 4e6, states: 3e5 } });
    const answer = ready.price(worth, caps, { work: workPerQuestion, seed: 1, floor });
    meter.spent += answer.work / 2;
    return answer;
  };
  return {
    bound(worth, target) {
      const { pattern, bound } = ask(worth, undefined, target);
      return { bound, pattern: pattern.placements.length === 0 ? null : pattern };
    },
    pattern: (worth, caps, target) => ask(worth, caps, target).pattern,
    glance(worth, target) {
      const { pattern } = ask(worth, undefined, target);
      return pattern.value > target ? pattern : null;
    },
    isQuickAtAGlance: () => false,
    canCount: () => false,
  };
}
