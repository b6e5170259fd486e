import { prepareGuillotine } from '../patterns/guillotine/prepare-guillotine.ts';
import type { Meter } from '../patterns/meter.ts';
import type { Kind, Plate, PlatePattern } from '../patterns/plate.ts';
import type { PriceBound, Pricer } from '../patterns/strip/strip-pricer.ts';

/** Work of one question, in the engine's steps: a few passes over a board of usual size. */
const workPerQuestion = 4e6;

/** The same where a pattern is wanted and no bound, among many tries: one look, mostly. */
const workPerTry = 4e5;

/** Work of a second question, where the first found nothing and does not know that there is nothing: shared among all boards. */
const workOfSecond = 1.6e8;

/** By how much of it a pattern must exceed a target to be more than one that is known. */
const worthAsking = 1e-6;

const nothing: PlatePattern = { placements: [], value: 0 };

/** With so few boards, a pattern is asked of both engines, and a bound a second time. */
const mostBoardsForBoth = 4;

/** Whether more stages are allowed than the strip engine's four. */
export function isDeep(stages: Plate['stages']): boolean {
  return stages === 'any' || stages > 4;
}

/**
 * Pricing with one or two stages, or with more than four, by the general guillotine engine. Its patterns keep the kinds' own caps, so a bound
 * from it is already one of capped patterns. The plate is made ready at the first question.
 * @param how boards: how many are priced so, of few each may be looked into for long; hasTries: whether patterns are asked for in many tries, or each
 * is to be as good as it gets
 */
export function openAnyStagePricer(
  plate: Plate,
  kinds: readonly Kind[],
  meter: Meter,
  { boards, hasTries }: { readonly boards: number; readonly hasTries: boolean },
): Pricer {
  let ready: ReturnType<typeof prepareGuillotine> | null = null;
  const ask = (worth: Float64Array, caps: Int32Array | undefined, floor: number, work: number) => {
    ready ??= prepareGuillotine(plate, kinds, { limits: { passWork: 4e6, states: 3e5 } });
    const answer = ready.price(worth, caps, { work, seed: 1, floor });
    meter.spent += answer.work / 2;
    return answer;
  };
  return {
    bound(worth, target) {
      const first = ask(worth, undefined, target, workPerQuestion);
      const isOpen = boards <= mostBoardsForBoth && first.pattern.placements.length === 0 && !first.proven;
      const { pattern, bound } = isOpen ? ask(worth, undefined, target, workOfSecond / boards) : first;
      return {
        bound: Math.min(bound, first.bound),
        pattern: pattern.placements.length === 0 ? null : pattern,
      };
    },
    pattern: (worth, caps, target) =>
      ask(worth, caps, target, hasTries ? workPerTry : workPerQuestion).pattern,
    glance(worth, target) {
      const { pattern } = ask(worth, undefined, target, workPerQuestion);
      return pattern.value > target ? pattern : null;
    },
    isQuickAtAGlance: () => false,
    canCount: () => false,
    isGeneral: true,
  };
}

/**
 * Pricing with more than four stages by both engines: whatever can be cut in four can be cut in more, and the strip
 * engine finds such patterns sooner, on flawed boards above all. Only where it finds none the general one is asked, and for bounds.
 * @param general pricing of the plate   @param strips pricing of the same plate in four stages   @param boards how many there are
 */
export function openDeepPricer(
  general: Pricer,
  strips: Pricer,
  kinds: readonly Kind[],
  boards: number,
): Pricer {
  /** All pieces of all kinds, which no pattern is worth more than. */
  const allOf = (worth: Float64Array): number =>
    kinds.reduce((sum, { cap }, k) => sum + cap * Math.max(0, worth[k]!), 0);
  const caps = Int32Array.from(kinds, ({ cap }) => cap);
  const isOfFew = boards <= mostBoardsForBoth;
  const better = (one: PlatePattern, two: PlatePattern): PlatePattern => (two.value > one.value ? two : one);
  return {
    bound(worth, target, { mayBeLoose = false } = {}): PriceBound {
      // What the master has already is worth the target, but for rounding.
      const isNew = (value: number): boolean => value > target + worthAsking * (1 + Math.abs(target));
      const pattern = isOfFew || !mayBeLoose ? nothing : strips.pattern(worth, caps, target, true);
      return isNew(pattern.value) ? { bound: allOf(worth), pattern } : general.bound(worth, target);
    },
    pattern(worth, most, target, fine) {
      const cut = strips.pattern(worth, most, target, fine);
      return !isOfFew ? cut : better(cut, general.pattern(worth, most, target, fine));
    },
    glance: strips.glance,
    isQuickAtAGlance: () => !isOfFew || strips.isQuickAtAGlance(),
    canCount: () => false,
    isGeneral: true,
  };
}
