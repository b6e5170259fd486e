import type { Numbering } from './numbering.ts';

/**
 * What strips offer pieces of one length, as flat lists by the number of the group: one option everywhere but from one x index
 * on, where the list of ids says. Equal offers of one length are one group, whichever strips make them.
 */
export interface BandGroups {
  /**
   * Of each group `perGroup` numbers: where in the raster's `next` the list of its length begins, its option where nothing is in the
   * way, the x indices from and up to which ids say the option, and what is added to an x index for its place among the ids.
   */
  readonly table: Int32Array;
  readonly ids: Uint16Array;
}

/** Entries of each group in the table. */
export const perGroup = 5;

/** Spans of a group that differ from its clear option: from `first`, `stop` exclusive. */
export function eachSpan(
  { lists, from }: Numbering,
  group: number,
  take: (first: number, stop: number, id: number) => void,
): void {
  for (let k = from[group]! + 2; k < from[group + 1]!; k += 3) take(lists[k]!, lists[k + 1]!, lists[k + 2]!);
}

/** Most option numbers that the ids can tell apart. */
const mostOptions = 65_536;

/** The groups as flat lists. @param options how many options there are   @param positions of the raster */
export function groupTable(groups: Numbering, options: number, positions: number): BandGroups {
  if (options > mostOptions) throw new RangeError(`${options} options are more than ${mostOptions}`);
  const { lists, from, count } = groups;
  const table = new Int32Array(perGroup * count);
  let all = 0;
  for (let g = 0; g < count; g += 1) {
    const at = from[g]!;
    const isPlain = from[g + 1]! - at === 2;
    const start = isPlain ? 0 : lists[at + 2]!;
    const stop = isPlain ? 0 : lists[from[g + 1]! - 2]!;
    table.set([lists[at]! * positions, lists[at + 1]!, start, stop, all - start], perGroup * g);
    all += stop - start;
  }
  const ids = new Uint16Array(all);
  for (let g = 0; g < count; g += 1) {
    const [, clear, start, stop, shift] = table.subarray(perGroup * g, perGroup * (g + 1));
    ids.fill(clear!, start! + shift!, stop! + shift!);
    eachSpan(groups, g, (first, last, id) => ids.fill(id, first + shift!, last + shift!));
  }
  return { table, ids };
}
