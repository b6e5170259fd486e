import { prepareGuillotine } from '../patterns/guillotine/prepare-guillotine.ts';
import type { Meter } from '../patterns/meter.ts';
import type { Placement } from '../patterns/plate.ts';
import type { Pricer } from '../patterns/strip/strip-pricer.ts';
import type { StockGroup } from './instance.ts';

/** Counts that are proven to fit no board of a plate, by its pricer. More of the same fit none either. */
export type Unfit = Map<Pricer, Int32Array[]>;

/** How hard the general engine tries, one after another: cut places kept, and its steps. */
const efforts = [
  { limits: { passWork: 4e6, states: 3e5 }, work: 2e7 },
  { limits: { passWork: 4e7, states: 3e6 }, work: 2e8 },
] as const;

/** The engine's steps in one unit of the meter. */
const stepsPerUnit = 5;

/**
 * Whether one board holds exactly these counts: the pieces' places, `none` when it is proven that it does not, or
 * `unknown`. The quick search comes first; where it fails, the general engine, whose bound keeps the caps.
 * @param unfit what is proven so far; grows
 */
export function patternWith(
  group: StockGroup,
  counts: Int32Array,
  unfit: Unfit,
  meter: Meter,
): readonly Placement[] | 'none' | 'unknown' {
  const wanted = counts.reduce((sum, count) => sum + count, 0);
  if (wanted === 0) return [];
  const known = unfit.get(group.pricer) ?? [];
  if (known.some((less) => less.every((count, k) => count <= counts[k]!))) return 'none';
  const worth = Float64Array.from(group.kinds, ({ shapes }, k) =>
    counts[k]! > 0 ? shapes[0]!.length * shapes[0]!.width : 0,
  );
  const quick = group.pricer.pattern(worth, counts, 0, true);
  if (quick.placements.length === wanted) return quick.placements;
  const total = counts.reduce((sum, count, k) => sum + count * worth[k]!, 0);
  const kinds = group.kinds.map((kind, k) => (counts[k]! > 0 ? kind : { ...kind, clearances: [] }));
  const floor = total - 0.5 * Math.min(...worth.filter((each) => each > 0));
  for (const { limits, work } of efforts) {
    const answer = prepareGuillotine(group.plate, kinds, { limits }).price(worth, counts, {
      work,
      seed: 1,
      floor,
    });
    meter.spent += answer.work / stepsPerUnit;
    if (answer.pattern.placements.length === wanted) return answer.pattern.placements;
    if (answer.bound < total * (1 - 1e-9)) {
      unfit.set(group.pricer, [...known, counts]);
      return 'none';
    }
  }
  return 'unknown';
}
