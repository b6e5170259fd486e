import type { Meter } from '../meter.ts';
import type { ArcWorth, SuffixTable } from './suffix-table.ts';

/**
 * All loads of a stick worth at least `least`, by depth-first search with the (filled) table as bound; null when there
 * are more than `most`. Each kind at most once (a table of single pieces with step 1).
 */
export function allLoads(
  table: SuffixTable,
  worth: Float64Array,
  caps: Int32Array,
  length: number,
  least: number,
  most: number,
  meter: Meter,
  arcs?: ArcWorth,
): number[][] | null {
  const { lengths, width, values } = table;
  const loads: number[][] = [];
  const taken: number[] = [];
  let steps = 0;
  const visit = (from: number, left: number, value: number): boolean => {
    if (value >= least && taken.length > 0) loads.push([...taken]);
    for (let k = from; k < lengths.length; k += 1) {
      steps += 1;
      if (value + values[k * width + left]! < least) return true;
      if (lengths[k]! > left || caps[k]! <= 0 || arcs?.[k]?.[left] === -Infinity) continue;
      const next = left - lengths[k]!;
      if (value + worth[k]! + values[(k + 1) * width + next]! < least) continue;
      if (loads.length > most) return false;
      taken.push(k);
      const all = visit(k + 1, next, value + worth[k]!);
      taken.pop();
      if (!all) return false;
    }
    return true;
  };
  const complete = visit(0, length, 0);
  meter.spent += steps;
  return complete && loads.length <= most ? loads : null;
}
