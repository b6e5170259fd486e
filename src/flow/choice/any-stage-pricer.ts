import { prepareGuillotine } from '../patterns/guillotine/prepare-guillotine.ts';
import type { Meter } from '../patterns/meter.ts';
import type { Kind, Plate } from '../patterns/plate.ts';
import type { Pricer } from '../patterns/strip/strip-pricer.ts';

/** Work of one question, in the engine's steps: a few passes over a board of usual size. */
const workPerQuestion = 4e6;

/** The same where a pattern is wanted and no bound: one look, mostly. */
const workPerPattern = 4e5;

/** Work of a second question, where the first found nothing and does not know that there is nothing: shared among all boards. */
const workOfSecond = 1.6e8;

/**
 * Pricing with one or two stages, or with more than four, by the general guillotine engine. Its patterns keep the kinds' own caps, so a bound
 * from it is already one of capped patterns. The plate is made ready at the first question.
 * @param boards how many are priced so: of one or two each may be looked into for long
 */
export function openAnyStagePricer(
  plate: Plate,
  kinds: readonly Kind[],
  meter: Meter,
  boards: number,
): Pricer {
  let ready: ReturnType<typeof prepareGuillotine> | null = null;
  const ask = (worth: Float64Array, caps: Int32Array | undefined, floor: number, work: number) => {
    ready ??= prepareGuillotine(plate, kinds, { limits: { passWork: 4e6, states: 3e5 } });
    const answer = ready.price(worth, caps, { work, seed: 1, floor });
    meter.spent += answer.work / 2;
    return answer;
  };
  const second = workOfSecond / boards;
  return {
    bound(worth, target) {
      const first = ask(worth, undefined, target, workPerQuestion);
      const isOpen = first.pattern.placements.length === 0 && !first.proven && second > workPerQuestion;
      const { pattern, bound } = isOpen ? ask(worth, undefined, target, second) : first;
      return {
        bound: Math.min(bound, first.bound),
        pattern: pattern.placements.length === 0 ? null : pattern,
      };
    },
    pattern: (worth, caps, target) => ask(worth, caps, target, workPerPattern).pattern,
    glance(worth, target) {
      const { pattern } = ask(worth, undefined, target, workPerQuestion);
      return pattern.value > target ? pattern : null;
    },
    isQuickAtAGlance: () => false,
    canCount: () => false,
  };
}
