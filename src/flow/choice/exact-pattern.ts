import { prepareGuillotine } from '../patterns/guillotine/prepare-guillotine.ts';
import type { Meter } from '../patterns/meter.ts';
import type { Placement } from '../patterns/plate.ts';
import type { StockGroup } from './instance.ts';

/** Work of one question to the general engine, in its steps. */
const workPerQuestion = 2e7;

/**
 * Whether one board holds exactly these counts: the pieces' places, `none` when it is proven that it does not, or
 * `unknown`. The quick search comes first; where it fails, the general engine, whose bound keeps the caps.
 */
export function patternWith(
  group: StockGroup,
  counts: Int32Array,
  meter: Meter,
): readonly Placement[] | 'none' | 'unknown' {
  const worth = Float64Array.from(group.kinds, ({ shapes }, k) =>
    counts[k]! > 0 ? shapes[0]!.length * shapes[0]!.width : 0,
  );
  const wanted = counts.reduce((sum, count) => sum + count, 0);
  if (wanted === 0) return [];
  const quick = group.pricer.pattern(worth, counts, 0);
  if (quick.placements.length === wanted) return quick.placements;
  const total = counts.reduce((sum, count, k) => sum + count * worth[k]!, 0);
  const kinds = group.kinds.map((kind, k) => (counts[k]! > 0 ? kind : { ...kind, clearances: [] }));
  const ready = prepareGuillotine(group.plate, kinds, { limits: { passWork: 4e6, states: 3e5 } });
  const floor = total - 0.5 * Math.min(...worth.filter((each) => each > 0));
  const answer = ready.price(worth, counts, { work: workPerQuestion, seed: 1, floor });
  meter.spent += answer.work / 2;
  if (answer.pattern.placements.length === wanted) return answer.pattern.placements;
  return answer.bound < total * (1 - 1e-9) ? 'none' : 'unknown';
}
